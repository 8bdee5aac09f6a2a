package servowright.engine.thermal;

import java.util.OptionalDouble;
import servowright.engine.numeric.Roots;
import servowright.engine.quantity.Require;

/**
 * Resistance of a thermistor that falls as it warms, by the three constants of its curve.
 *
 * <p><b>Formula.</b> 1/T = A + B ln R + C (ln R)³, T in K and R in ohm. With C = 0 it is the exponential R = R₂₅ e^{β (1/T − 1/298.15 K)},
 * B = 1/β and A = 1/298.15 K − B ln R₂₅. <b>Valid for</b> the range the constants were fitted in; the exponential over some tens of kelvin.
 * <b>Source.</b> J. S. Steinhart, S. R. Hart, "Calibration curves for thermistors", Deep-Sea Research 15 (1968) (recalled).
 */
public record Thermistor(double a, double b, double c) {
    /** 25 °C. */
    public static final double REFERENCE_KELVIN = 298.15;

    public Thermistor {
        Require.finite("first constant of a thermistor", a, "1/K");
        Require.positive("second constant of a thermistor", b, "1/K");
        Require.finite("third constant of a thermistor", c, "1/K");
    }

    /** By its resistance at 25 °C and β in K. */
    public static Thermistor exponential(double ohmAt25, double betaKelvin) {
        double b = 1 / Require.positive("beta", betaKelvin, "K");
        return new Thermistor(
                1 / REFERENCE_KELVIN - b * Math.log(Require.positive("resistance at 25 degC", ohmAt25, "ohm")), b, 0);
    }

    /** Temperature at a resistance, K. */
    public double kelvin(double ohm) {
        double ln = Math.log(Require.positive("resistance of a thermistor", ohm, "ohm"));
        return 1 / (a + b * ln + c * ln * ln * ln);
    }

    /** Resistance at a temperature, between 1 mohm and 1 Gohm, ohm; empty where the curve has none. */
    public OptionalDouble ohm(double kelvin) {
        double inverse = 1 / Require.positive("temperature", kelvin, "K");
        OptionalDouble ln =
                Roots.between(l -> a + b * l + c * l * l * l - inverse, Math.log(1e-3), Math.log(1e9), 1e-12);
        return ln.isPresent() ? OptionalDouble.of(Math.exp(ln.getAsDouble())) : OptionalDouble.empty();
    }

    /** Resistance of a thermistor below a fixed one that share a voltage, R_f q / (1 − q) for the share q across the thermistor, ohm. */
    public static double ohmInDivider(double share, double fixedOhm) {
        Require.positive("fixed resistor", fixedOhm, "ohm");
        Require.positive("share", share, "");
        return fixedOhm * share / Require.positive("rest of the share", 1 - share, "");
    }
}
