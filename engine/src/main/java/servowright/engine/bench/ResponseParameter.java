package servowright.engine.bench;

/** What a test of a response gives; it belongs to whatever lies between its input and its output. */
public enum ResponseParameter implements Sought {
    /** Amplitude of the output over that of the input, at the frequency of the test. */
    RATIO("amplitude ratio", "r", "", "drive it with a sine, and record input and output over two periods or more"),
    /** Of the output against the input, at the frequency of the test. */
    PHASE("phase", "φ", "deg", "drive it with a sine, and record input and output over two periods or more"),
    /** Output over input when both stand still. */
    GAIN("gain of the response", "K", "", ResponseParameter.SETTLE),
    TIME_CONSTANT("time constant of the response", "τ", "ms", ResponseParameter.SETTLE),
    DELAY("delay of the response", "T", "ms", ResponseParameter.SETTLE);

    private static final String SETTLE =
            "sines at three frequencies or more around the corner, or steps and sweeps with their answer in one recording";

    private final Caption caption;

    ResponseParameter(String words, String symbol, String unit, String settle) {
        this.caption = new Caption(words, symbol, unit, settle);
    }

    @Override
    public Caption caption() {
        return caption;
    }
}
