package servowright.engine.quantity;

/** Where someone says a figure comes from. */
public enum StatedOrigin {
    LABEL("label"),
    DATA_SHEET("data sheet"),
    MEASURED("measured"),
    GUESS("guess");

    private final String words;

    StatedOrigin(String words) {
        this.words = words;
    }

    /** The words people write in square brackets behind the figure. */
    public String words() {
        return words;
    }
}
