package servowright.engine.quantity;

/** What an instrument makes of an alternating voltage. Of a sine they all tell the same; of a back-EMF that is none they do not. */
public enum Meter {
    /** Root mean square, whatever the shape. */
    TRUE_RMS("true rms"),
    /** Mean of the rectified voltage, scaled so that a sine reads its root mean square. */
    AVERAGING("averaging"),
    /** Highest value, by an oscilloscope's cursor or a peak hold. */
    PEAK("peak"),
    /** Mean behind a rectifier of all three terminals, with a load and no capacitor. */
    RECTIFIED("rectified"),
    /** Behind such a rectifier with a capacitor and next to no load: it holds the line peak. */
    RECTIFIED_HELD("rectified into a capacitor");

    private final String words;

    Meter(String words) {
        this.words = words;
    }

    /** The words people write in square brackets behind the figure. */
    public String words() {
        return words;
    }

    /** Whether all three terminals are joined to it, with two diodes in the way of the current. */
    public boolean behindDiodes() {
        return this == RECTIFIED || this == RECTIFIED_HELD;
    }
}
