package servowright.engine.acceptance;

/** How a figure stands against its limit, worst first. */
public enum Verdict {
    /** The whole interval lies outside. */
    FAILS("fails"),
    /** The interval lies inside, but within the margin. */
    TIGHT("tight"),
    /** The interval straddles the limit, or there is no figure yet. */
    NOT_SHOWN("not shown"),
    /** The interval lies inside, with margin. */
    HOLDS("holds");

    private final String words;

    Verdict(String words) {
        this.words = words;
    }

    /** As it is shown. */
    public String words() {
        return words;
    }
}
