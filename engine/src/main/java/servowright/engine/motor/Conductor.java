package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * What a winding is made of, for its resistance against temperature.
 *
 * <p><b>Formula.</b> R(t) = R(t₀) (k + t) / (k + t₀), t in degrees Celsius; −k is where the straight line meets zero.
 * <b>Valid</b> between about −40 and 200 °C. <b>Source.</b> 234.5 for annealed copper of 100 % IACS (α20 = 0.00393 /K
 * gives 234.45, recomputed); 235 as in IEC 60034-1 (seen as quoted); aluminium 225 as in IEC 60034-1 (from memory). The
 * two copper figures differ by less than 0.07 % in R up to 155 °C.
 */
public enum Conductor {
    /** Annealed copper, 100 % IACS. */
    COPPER_IACS("copper (234.5)", 234.5),
    /** Copper with the rounded figure of IEC 60034. */
    COPPER_IEC("copper (235)", 235),
    /** Aluminium. */
    ALUMINIUM("aluminium (225)", 225);

    private static final double ZERO_CELSIUS_KELVIN = 273.15;

    private final String words;
    private final double kCelsius;

    Conductor(String words, double kCelsius) {
        this.words = words;
        this.kCelsius = kCelsius;
    }

    /** The name in running text. */
    public String words() {
        return words;
    }

    /** k of the formula, in degrees Celsius. */
    public double kCelsius() {
        return kCelsius;
    }

    /**
     * Resistance at one temperature over that at another.
     *
     * @param fromKelvin temperature of the known resistance, above that of zero resistance
     * @param toKelvin   temperature asked for, above that of zero resistance
     */
    public double resistanceFactor(double fromKelvin, double toKelvin) {
        return aboveZeroResistance(toKelvin) / aboveZeroResistance(fromKelvin);
    }

    /** Relative change of resistance per kelvin, referred to {@code kelvin}: 1 / (k + t). */
    public double relativePerKelvin(double kelvin) {
        return 1 / aboveZeroResistance(kelvin);
    }

    private double aboveZeroResistance(double kelvin) {
        double above = kelvin - ZERO_CELSIUS_KELVIN + kCelsius;
        Require.positive("temperature above that of zero resistance", above, "K");
        return above;
    }
}
