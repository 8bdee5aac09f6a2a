package servowright.engine.motor;

import servowright.engine.quantity.Require;

/**
 * What the magnets are made of, for the flux linkage against temperature.
 *
 * <p><b>Formula.</b> λ(T) = λ(T₀) [1 + α (T − T₀)]. <b>Valid</b> for reversible change, from about −40 °C to the limit of
 * the grade (80 to 150 °C for most neodymium); beyond it flux is lost for good. <b>Source.</b> Handbook ranges of the
 * coefficient of remanence (from memory); the grade's data sheet is better.
 */
public enum MagnetMaterial {
    /** Neodymium iron boron. */
    NEODYMIUM("neodymium", -0.0013, -0.0011, -0.0009),
    /** Samarium cobalt 2:17. */
    SAMARIUM_COBALT("samarium cobalt", -0.0004, -0.0004, -0.0003),
    /** Hard ferrite. */
    FERRITE("ferrite", -0.0020, -0.0019, -0.0019);

    private final String words;
    private final double strongest;
    private final double usual;
    private final double weakest;

    MagnetMaterial(String words, double strongest, double usual, double weakest) {
        this.words = words;
        this.strongest = strongest;
        this.usual = usual;
        this.weakest = weakest;
    }

    /** The name in running text. */
    public String words() {
        return words;
    }

    /** Usual relative change of flux per kelvin, referred to 20 °C; negative. */
    public double perKelvin() {
        return usual;
    }

    /** Half the usual range of the coefficient, as a bound on how far the usual one may be off, per kelvin. */
    public double perKelvinHalfRange() {
        return Math.max(usual - strongest, weakest - usual);
    }

    /** Flux linkage at one temperature over that at another, with the usual coefficient referred to 20 °C. */
    public double fluxFactor(double fromKelvin, double toKelvin) {
        return relative(toKelvin) / relative(fromKelvin);
    }

    private double relative(double kelvin) {
        double relative = 1 + usual * (Require.positive("magnet temperature", kelvin, "K") - 293.15);
        return Require.positive("remaining share of the magnet flux", relative, "");
    }
}
