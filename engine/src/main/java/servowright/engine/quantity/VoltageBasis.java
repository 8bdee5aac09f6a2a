package servowright.engine.quantity;

/**
 * How a voltage of a three-phase machine is stated. A back-EMF or speed constant means nothing without it: between
 * phase peak and line peak lies a factor sqrt 3, between peak and RMS a factor sqrt 2.
 *
 * <p>For a sinusoidal back-EMF with phase peak 1 V the same winding shows 0.707 V phase RMS, 1.732 V line peak, 1.225 V
 * line RMS, and 1.654 V as the mean of the six-pulse rectified line voltage.
 */
public enum VoltageBasis {
    /** Peak between two terminals. */
    LINE_PEAK("line peak"),
    /** Root mean square between two terminals. */
    LINE_RMS("line rms"),
    /** Peak between a terminal and the star point of the equivalent star. */
    PHASE_PEAK("phase peak"),
    /** Root mean square between a terminal and the star point of the equivalent star. */
    PHASE_RMS("phase rms"),
    /** Mean of the six-pulse rectified line voltage: what block commutation sees at its direct-current side. */
    SIX_STEP("six-step");

    private final String words;

    VoltageBasis(String words) {
        this.words = words;
    }

    /** The words people write in square brackets behind the figure. */
    public String words() {
        return words;
    }
}
