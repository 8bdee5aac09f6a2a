package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Length of classical frames of one identifier and number of bytes, for many payloads: the same figure as {@link FrameBits}, a byte at a
 * time. What comes before the payload is worked out once.
 */
public final class StuffedLength {
    private static final int STATES = 10;
    private static final int POLYNOMIAL = 0x4599;
    private static final int[] CHECKSUM = checksums();
    private static final short[] EIGHT = steps(8);
    private static final short[] SEVEN = steps(7);

    private final int bytes;
    private final int headBits;
    private final int headState;
    private final int headChecksum;

    private StuffedLength(int bytes, int headBits, int headState, int headChecksum) {
        this.bytes = bytes;
        this.headBits = headBits;
        this.headState = headState;
        this.headChecksum = headChecksum;
    }

    /** For data frames of one identifier. */
    public static StuffedLength of(IdLength id, int identifier, int bytes) {
        Require.within("bytes of a classical frame", 0, 8, bytes, "");
        boolean[] head = FrameBits.body(id, identifier, false, bytes, new byte[bytes]);
        int count = ClassicalFrame.stuffable(id, 0) - 15;
        int state = -1;
        int stuffed = 0;
        for (int i = 0; i < count; i++) {
            int next = next(state, head[i] ? 1 : 0);
            stuffed += next >> 8;
            state = next & 0xff;
        }
        int unstuffed = ClassicalFrame.leastBits(id, bytes);
        return new StuffedLength(bytes, unstuffed + stuffed, state, FrameBits.checksum(head, count));
    }

    /** Bits on the wire with this payload, intermission included; only the first bytes of the array count. */
    public int bits(byte[] payload) {
        int state = headState;
        int crc = headChecksum;
        int length = headBits;
        for (int i = 0; i < bytes; i++) {
            int b = payload[i] & 0xff;
            crc = ((crc << 8) & 0x7fff) ^ CHECKSUM[(crc >> 7) ^ b];
            int step = EIGHT[(state << 8) | b];
            length += step >> 8;
            state = step & 0xff;
        }
        int step = EIGHT[(state << 8) | (crc >> 7)];
        length += step >> 8;
        return length + (SEVEN[((step & 0xff) << 8) | (crc & 0x7f)] >> 8);
    }

    /** State after a bit, with 256 added when a stuff bit follows it. A state is the last bit and the length of its run less one. */
    private static int next(int state, int bit) {
        boolean same = state >= 0 && state / 5 == bit;
        int run = same ? state % 5 + 1 : 0;
        return run == 4 ? 256 + (1 - bit) * 5 : bit * 5 + run;
    }

    private static short[] steps(int count) {
        short[] table = new short[STATES << 8];
        for (int state = 0; state < STATES; state++) {
            for (int value = 0; value < 1 << count; value++) {
                int at = state;
                int stuffed = 0;
                for (int k = count - 1; k >= 0; k--) {
                    int next = next(at, (value >> k) & 1);
                    stuffed += next >> 8;
                    at = next & 0xff;
                }
                table[(state << 8) | value] = (short) ((stuffed << 8) | at);
            }
        }
        return table;
    }

    private static int[] checksums() {
        int[] table = new int[256];
        for (int b = 0; b < 256; b++) {
            int crc = b << 7;
            for (int k = 0; k < 8; k++) {
                crc = (crc & 0x4000) != 0 ? (crc << 1) ^ POLYNOMIAL : crc << 1;
            }
            table[b] = crc & 0x7fff;
        }
        return table;
    }
}
