package servowright.engine.bench;

/** What recorders that saw one event tell of each other. */
public enum RecorderParameter implements Sought {
    /** An event at t on the clock of the other recorder is at t and this much more on the clock of the first. */
    CLOCK_OFFSET(
            "offset of the clock",
            "δ",
            "ms",
            "record one sharp event with both recorders, in channels that show the same or what follows it at once");

    private final Caption caption;

    RecorderParameter(String words, String symbol, String unit, String settle) {
        this.caption = new Caption(words, symbol, unit, settle);
    }

    @Override
    public Caption caption() {
        return caption;
    }
}
