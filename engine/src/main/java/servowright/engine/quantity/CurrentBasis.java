package servowright.engine.quantity;

/**
 * How a motor current is stated. For id = 0 a q-axis current of 1 A is a phase current of 1 A peak, or 0.707 A RMS.
 */
public enum CurrentBasis {
    /** Current on the q axis, amplitude-invariant: the peak of the phase current when id is zero. */
    Q_AXIS("q axis"),
    /** Root mean square of the sinusoidal phase current. */
    PHASE_RMS("phase rms"),
    /** Direct current that block commutation sends through two phases. */
    SIX_STEP("six-step"),
    /** Current drawn from the supply: never a motor current, and refused where one is asked. */
    SUPPLY("supply");

    private final String words;

    CurrentBasis(String words) {
        this.words = words;
    }

    /** The words people write in square brackets behind the figure. */
    public String words() {
        return words;
    }
}
