package servowright.engine.capture;

import servowright.engine.quantity.Require;

/**
 * A number inside the data of a message.
 *
 * <p><b>Formula.</b> value = count · scale + offset. With the low byte first, bits are counted from the low bit of the first byte, and
 * {@code start} is the lowest of the number; with the high byte first they are counted from the high bit of the first byte, and
 * {@code start} is the highest.
 *
 * @param name       what it is
 * @param identifier of its message; above 7FF it has 29 bits
 * @param start      number of its first bit, 0 to 511
 * @param bits       how many it has, 1 to 64
 * @param highFirst  whether the high byte comes first
 * @param signed     whether it is a two's complement
 * @param scale      of one count, SI
 * @param offset     of no count, SI
 */
public record Signal(
        String name,
        int identifier,
        int start,
        int bits,
        boolean highFirst,
        boolean signed,
        double scale,
        double offset) {
    private static final int MOST_STANDARD = 0x7ff;
    private static final int LONG = 64;

    public Signal {
        Require.within("first bit", 0, 511, start, "");
        Require.within("bits", 1, LONG, bits, "");
    }

    /** Whether a frame carries it. */
    public boolean in(Frame frame) {
        return frame.identifier() == identifier
                && frame.is(Frame.EXTENDED) == (identifier > MOST_STANDARD)
                && !frame.is(Frame.REMOTE | Frame.ERROR)
                && start + bits <= 8 * frame.length();
    }

    /** Its count in a frame that carries it. */
    public long count(Frame frame) {
        long count = 0;
        for (int k = 0; k < bits; k++) {
            int at = highFirst ? start + k : start + bits - 1 - k;
            int shift = highFirst ? 7 - at % 8 : at % 8;
            count = count << 1 | (frame.at(at / 8) >>> shift & 1);
        }
        return signed && bits < LONG && count >>> (bits - 1) != 0 ? count - (1L << bits) : count;
    }

    /** Its value in a frame that carries it, SI. */
    public double value(Frame frame) {
        return count(frame) * scale + offset;
    }

    /** By how much it jumps when its count runs over, SI. */
    public double span() {
        return Math.scalb(Math.abs(scale), bits);
    }
}
