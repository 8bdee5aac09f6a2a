package servowright.engine.capture;

import servowright.engine.bus.ClassicalFrame;
import servowright.engine.bus.FdFrame;

/**
 * The exact number of bits a frame took on the wire, stuff bits and intermission included, counted eight bits at a time.
 *
 * <p>Stuffing is a walk through nine states (nothing yet, or one to four equal bits of either value); tables hold where each byte, and
 * each group of three or seven bits, leads from each state and how many stuff bits it costs. The checksum of a classical frame is stuffed too and comes from the usual
 * byte table; leading zeros do not change it, since it starts from 0. In FD the checksum has stuff bits at fixed places, so its value
 * does not matter. Agrees bit for bit with {@link servowright.engine.bus.FrameBits}, which names the sources.
 */
public final class WireLength {
    private static final int POLYNOMIAL = 0x4599;
    private static final int STATES = 9;
    private static final int[] BIT = new int[STATES * 2];
    private static final short[] BYTE = new short[STATES << 8];
    private static final short[] SEVEN = new short[STATES << 7];
    private static final short[] THREE = new short[8];
    private static final short[] CRC = new short[256];
    private static final int FD_TAIL = 12;

    static {
        for (int state = 0; state < STATES; state++) {
            for (int bit = 0; bit < 2; bit++) {
                BIT[state * 2 + bit] = step(state, bit);
            }
        }
        for (int state = 0; state < STATES; state++) {
            for (int value = 0; value < 256; value++) {
                BYTE[state << 8 | value] = (short) walk(state, value, 8);
                SEVEN[state << 7 | value >>> 1] = (short) walk(state, value >>> 1, 7);
            }
        }
        for (int value = 0; value < 8; value++) {
            THREE[value] = (short) walk(0, value, 3);
        }
        for (int value = 0; value < 256; value++) {
            int crc = value << 7;
            for (int k = 0; k < 8; k++) {
                crc = (crc << 1) ^ ((crc & 0x4000) != 0 ? POLYNOMIAL : 0);
            }
            CRC[value] = (short) (crc & 0x7fff);
        }
    }

    private int state;
    private int stuffed;
    private int nominalBits;
    private int dataBits;

    /** A step by one bit: the next state, with 16 added for a stuff bit. State 1 + 4 bit + (run - 1). */
    private static int step(int state, int bit) {
        int run = state > 0 && (state - 1) / 4 == bit ? (state - 1) % 4 + 2 : 1;
        return run == 5 ? 16 + 1 + 4 * (1 - bit) : 1 + 4 * bit + run - 1;
    }

    /** Steps by bits, the highest first: the last state, with 16 added for each stuff bit. */
    private static int walk(int from, int value, int bits) {
        int state = from;
        int stuffs = 0;
        for (int k = bits - 1; k >= 0; k--) {
            int next = BIT[state * 2 + ((value >>> k) & 1)];
            stuffs += next & 16;
            state = next & 15;
        }
        return stuffs | state;
    }

    /** Bits at the nominal rate of the last frame measured. */
    public int nominalBits() {
        return nominalBits;
    }

    /** Bits at the data rate; 0 unless the rate was switched. */
    public int dataBits() {
        return dataBits;
    }

    /** How long the last frame measured held the bus, ns. */
    public long nanoseconds(BitTimes times) {
        return nominalBits * times.nominalNs() + dataBits * times.dataNs();
    }

    /** Measures a data or remote frame. An error report has no length of its own: it counts as 0. */
    public void measure(Frame frame) {
        state = 0;
        stuffed = 0;
        dataBits = 0;
        nominalBits = 0;
        if (frame.is(Frame.FD)) {
            fd(frame);
        } else if (!frame.is(Frame.ERROR)) {
            classical(frame);
        }
    }

    /** Start of frame, identifier and control bits are 3 or 7 bits and some bytes; leading zeros leave the checksum at 0. */
    private void classical(Frame frame) {
        int id = frame.identifier();
        int remote = frame.is(Frame.REMOTE) ? 1 : 0;
        int bytes = remote == 1 ? 0 : Math.min(8, frame.length());
        int control = remote << 6 | frame.code();
        if (frame.is(Frame.EXTENDED)) {
            int first = id >>> 23;
            int rest = id >>> 18 << 27 | 3 << 25 | (id & 0x3ffff) << 7 | control;
            int step = SEVEN[first];
            int sum = CRC[first];
            for (int shift = 24; shift >= 0; shift -= 8) {
                int value = rest >>> shift & 0xff;
                sum = (sum << 8 ^ CRC[(sum >>> 7 ^ value) & 0xff]) & 0x7fff;
                step = BYTE[(step & 15) << 8 | value] + (step & ~15);
            }
            nominalBits = 54 + walkOn(frame.data(), bytes, step, sum);
        } else {
            int first = id >>> 9;
            int middle = id >>> 1 & 0xff;
            int last = (id & 1) << 7 | control;
            int sum = CRC[first];
            sum = (sum << 8 ^ CRC[(sum >>> 7 ^ middle) & 0xff]) & 0x7fff;
            sum = (sum << 8 ^ CRC[(sum >>> 7 ^ last) & 0xff]) & 0x7fff;
            int step = THREE[first];
            step = BYTE[(step & 15) << 8 | middle] + (step & ~15);
            step = BYTE[(step & 15) << 8 | last] + (step & ~15);
            nominalBits = 34 + walkOn(frame.data(), bytes, step, sum);
        }
    }

    /** The bits of data and checksum without its 15 and with all stuff bits, and those that no stuffing touches. */
    private static int walkOn(byte[] data, int bytes, int from, int checksum) {
        int step = from;
        int sum = checksum;
        for (int k = 0; k < bytes; k++) {
            int value = data[k] & 0xff;
            sum = (sum << 8 ^ CRC[(sum >>> 7 ^ value) & 0xff]) & 0x7fff;
            step = BYTE[(step & 15) << 8 | value] + (step & ~15);
        }
        step = BYTE[(step & 15) << 8 | sum >>> 7] + (step & ~15);
        step = SEVEN[(step & 15) << 7 | (sum & 0x7f)] + (step & ~15);
        return 8 * bytes + (step >>> 4) + ClassicalFrame.TAIL_BITS;
    }

    /**
     * Start of frame to the rate switch bit at the nominal rate, then to the checksum at the data rate. A run of five that ends on
     * the rate switch bit is broken behind it; one that ends on the last bit before the stuff count meets a fixed stuff bit.
     */
    private void fd(Frame frame) {
        int id = frame.identifier();
        int switched = frame.is(Frame.RATE_SWITCH) ? 1 : 0;
        boolean extended = frame.is(Frame.EXTENDED);
        few(extended ? id >>> 18 : id, 12);
        if (extended) {
            few(3, 2);
            few(id & 0x3ffff, 18);
        }
        few(2, extended ? 3 : 4);
        int inHead = stuffed;
        few(switched << 1 | (frame.is(Frame.SENDER_PASSIVE) ? 1 : 0), 2);
        int carried = FdFrame.bytesOf(frame.code());
        byte[] data = frame.data();
        few(carried == 0 ? frame.code() >>> 1 : frame.code(), carried == 0 ? 3 : 4);
        for (int k = 0; k < carried; k++) {
            int value = k < frame.length() ? data[k] & 0xff : 0;
            if (k < carried - 1) {
                stuff(value);
            } else {
                few(value >>> 1, 7);
            }
        }
        int checksum = carried <= 16 ? 17 + 6 : 21 + 7;
        int behind = 1 + 4 + 8 * carried + 4 + checksum + 1 + stuffed - inHead;
        nominalBits = (extended ? 36 : 17) + FD_TAIL + inHead + (switched == 1 ? 0 : behind);
        dataBits = switched == 1 ? behind : 0;
    }

    private void few(int value, int bits) {
        int s = state;
        for (int k = bits - 1; k >= 0; k--) {
            int next = BIT[s * 2 + ((value >>> k) & 1)];
            stuffed += next >>> 4;
            s = next & 15;
        }
        state = s;
    }

    private void stuff(int value) {
        int next = BYTE[state << 8 | value];
        stuffed += next >>> 4;
        state = next & 15;
    }
}
