package servowright.engine.bus;

/** Length of a frame's identifier. */
public enum IdLength {
    /** 11 bits, base format. */
    STANDARD(11),
    /** 29 bits, extended format. */
    EXTENDED(29);

    private final int bits;

    IdLength(int bits) {
        this.bits = bits;
    }

    /** Number of identifier bits. */
    public int bits() {
        return bits;
    }
}
