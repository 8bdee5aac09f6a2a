package servowright.engine.bench;

/** What the predictions need to know of a motor, each on one fixed basis. */
public enum MotorParameter {
    POLE_PAIRS("pole pairs", "p", ""),
    /** Peak magnet flux linkage of a star-equivalent phase, magnets at 20 degC. */
    FLUX_LINKAGE("flux linkage", "λ", "mWb"),
    /** Star-equivalent phase resistance, winding at 20 degC. */
    PHASE_RESISTANCE("phase resistance", "R", "mohm"),
    D_INDUCTANCE("d inductance", "Ld", "uH"),
    Q_INDUCTANCE("q inductance", "Lq", "uH"),
    ROTOR_INERTIA("rotor inertia", "J", "kg cm2");

    private final String words;
    private final String symbol;
    private final String unit;

    MotorParameter(String words, String symbol, String unit) {
        this.words = words;
        this.symbol = symbol;
        this.unit = unit;
    }

    /** As it is shown. */
    public String words() {
        return words;
    }

    /** Its symbol in formulas. */
    public String symbol() {
        return symbol;
    }

    /** Unit to show it in; empty for a pure number. */
    public String unit() {
        return unit;
    }
}
