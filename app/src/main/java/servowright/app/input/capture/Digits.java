package servowright.app.input.capture;

import java.util.Arrays;

/** Digits, hexadecimal and decimal, among bytes. */
final class Digits {
    private static final byte[] NIBBLES = new byte[256];
    private static final long[] SCALE = {
        1_000_000_000, 100_000_000, 10_000_000, 1_000_000, 100_000, 10_000, 1000, 100, 10, 1
    };

    static {
        Arrays.fill(NIBBLES, (byte) -1);
        for (int k = 0; k < 16; k++) {
            NIBBLES[Character.toUpperCase(Character.forDigit(k, 16))] = (byte) k;
            NIBBLES[Character.forDigit(k, 16)] = (byte) k;
        }
    }

    private Digits() {}

    /** 0 to 15, or -1. */
    static int nibble(byte b) {
        return NIBBLES[b & 0xff];
    }

    /** 0 to 255 from two digits, or something negative. */
    static int pair(byte[] b, int at) {
        return NIBBLES[b[at] & 0xff] << 4 | NIBBLES[b[at + 1] & 0xff];
    }

    static boolean decimal(byte b) {
        return b >= '0' && b <= '9';
    }

    /** The hexadecimal number from {@code from} to {@code to}, at most 8 digits; -1 when it is none. */
    static long hex(byte[] b, int from, int to) {
        if (from >= to || to - from > 8) {
            return -1;
        }
        long value = 0;
        for (int i = from; i < to; i++) {
            int digit = nibble(b[i]);
            if (digit < 0) {
                return -1;
            }
            value = value << 4 | digit;
        }
        return value;
    }

    /** The whole number from {@code from} to {@code to}, at most 18 digits; -1 when it is none. */
    static long whole(byte[] b, int from, int to) {
        if (from >= to || to - from > 18) {
            return -1;
        }
        long value = 0;
        for (int i = from; i < to; i++) {
            if (!decimal(b[i])) {
                return -1;
            }
            value = value * 10 + b[i] - '0';
        }
        return value;
    }

    /**
     * Seconds with a fraction of up to 9 digits as nanoseconds; -1 when it is none.
     *
     * @param perSecond nanoseconds to the unit before the point: 10^9 for seconds, 10^6 for milliseconds
     */
    static long nanoseconds(byte[] b, int from, int to, long perSecond) {
        int point = from;
        while (point < to && b[point] != '.') {
            point++;
        }
        long whole = whole(b, from, point);
        int decimals = to - point - 1;
        if (whole < 0 || whole > Long.MAX_VALUE / perSecond - 1) {
            return -1;
        }
        if (decimals <= 0) {
            return whole * perSecond;
        }
        long part = decimals > 9 ? -1 : whole(b, point + 1, to);
        return part < 0 ? -1 : whole * perSecond + part * SCALE[decimals] / (1_000_000_000 / perSecond);
    }
}
