package servowright.engine.known;

/** Where a figure comes from, best last word first. */
public enum Origin {
    /** Reduced from a reading or recording on the bench. */
    MEASURED("measured"),
    /** Stated in the machine's own files without saying more. */
    DECLARED("declared"),
    /** Printed by a maker: label or data sheet. */
    DATA_SHEET("data sheet"),
    /** Computed from other figures. */
    DERIVED("derived"),
    /** Taken because nothing better is known; every view says so and why. */
    ASSUMED("assumed");

    private final String words;

    Origin(String words) {
        this.words = words;
    }

    /** As it is shown. */
    public String words() {
        return words;
    }
}
