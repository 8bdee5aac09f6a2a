package servowright.engine.machine;

/** What can be counted about a signal in the data of a message. */
public enum SignalFigure implements Key.Named {
    START(Key.count(
            "start",
            "its first bit: from the low bit of the first byte, or with the high byte first from the high bit",
            0,
            511,
            "0")),
    BITS(Key.count("bits", "how many bits it has", 1, 64, "32"));

    private final Key key;

    SignalFigure(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }
}
