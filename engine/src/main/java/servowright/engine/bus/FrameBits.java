package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * The very bits of a classical frame: what a given identifier and payload take on the wire, with checksum and stuff bits.
 *
 * <p>Checksum polynomial x^15 + x^14 + x^10 + x^8 + x^7 + x^4 + x^3 + 1 (0x4599), start value 0, over start of frame to the
 * last data bit, before stuffing. <b>Source.</b> ISO 11898-1, clause on the cyclic redundancy check (recalled); Bosch CAN
 * Specification 2.0, 1991, part A 3.1.1.
 */
public final class FrameBits {
    private static final int POLYNOMIAL = 0x4599;

    private FrameBits() {}

    /**
     * Bits on the wire of a data frame, intermission included.
     *
     * @param identifier 0 to 2^11 - 1 or 2^29 - 1
     * @param payload    up to 8 bytes
     */
    public static int ofData(IdLength id, int identifier, byte[] payload) {
        return stuffedLength(body(id, identifier, false, payload.length, payload)) + ClassicalFrame.TAIL_BITS;
    }

    /**
     * Bits on the wire of a remote frame, intermission included.
     *
     * @param lengthCode asked for, 0 to 8
     */
    public static int ofRemote(IdLength id, int identifier, int lengthCode) {
        return stuffedLength(body(id, identifier, true, lengthCode, new byte[0])) + ClassicalFrame.TAIL_BITS;
    }

    /** The 15-bit checksum over the bits given. */
    public static int checksum(boolean[] bits, int count) {
        int crc = 0;
        for (int i = 0; i < count; i++) {
            boolean next = bits[i] ^ ((crc & 0x4000) != 0);
            crc = (crc << 1) & 0x7fff;
            if (next) {
                crc ^= POLYNOMIAL;
            }
        }
        return crc;
    }

    /** Start of frame to the end of the checksum, before stuffing. */
    static boolean[] body(IdLength id, int identifier, boolean remote, int lengthCode, byte[] payload) {
        Require.within("identifier", 0, id == IdLength.STANDARD ? 0x7ff : 0x1fff_ffff, identifier, "");
        Require.within("length code", 0, 8, lengthCode, "");
        Line line = new Line(ClassicalFrame.stuffable(id, payload.length));
        line.put(0, 1);
        if (id == IdLength.STANDARD) {
            line.put(identifier, 11);
            line.put(remote ? 1 : 0, 1);
            line.put(0, 2);
        } else {
            line.put(identifier >>> 18, 11);
            line.put(3, 2);
            line.put(identifier & 0x3ffff, 18);
            line.put(remote ? 1 : 0, 1);
            line.put(0, 2);
        }
        line.put(lengthCode, 4);
        for (byte b : payload) {
            line.put(b & 0xff, 8);
        }
        line.put(checksum(line.bits, line.used), 15);
        return line.bits;
    }

    /** Number of bits after stuffing. */
    static int stuffedLength(boolean[] bits) {
        int length = 0;
        int run = 0;
        boolean last = true;
        for (boolean bit : bits) {
            length++;
            run = length > 1 && bit == last ? run + 1 : 1;
            last = bit;
            if (run == 5) {
                length++;
                last = !bit;
                run = 1;
            }
        }
        return length;
    }

    private static final class Line {
        private final boolean[] bits;
        private int used;

        Line(int length) {
            bits = new boolean[length];
        }

        void put(int value, int count) {
            for (int k = count - 1; k >= 0; k--) {
                bits[used++] = ((value >>> k) & 1) != 0;
            }
        }
    }
}
