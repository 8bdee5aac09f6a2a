package servowright.app.input.csv;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;

/**
 * Reads one decimal number out of bytes.
 *
 * <p>A number of at most 2^53 in its digits and a power of ten of at most 22 is the exact quotient or product of two
 * doubles, so one division or multiplication rounds it correctly (William D. Clinger, How to Read Floating Point Numbers
 * Accurately, PLDI 1990, section 3). All other numbers go to a library that rounds every case correctly.
 */
final class NumberScanner {
    private static final double[] TENS = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    private static final long[] SHIFT = {1, 10, 100, 1000, 10_000, 100_000, 1_000_000, 10_000_000, 100_000_000};
    private static final long EXACT = 1L << 53;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final long ZEROS = 0x3030_3030_3030_3030L;
    private static final long SIXES = 0x0606_0606_0606_0606L;
    private static final long HIGH = 0xf0f0_f0f0_f0f0_f0f0L;
    private static final long PAIRS = 0x0000_00ff_0000_00ffL;

    private final byte decimal;
    private long mantissa;
    private double value;
    private int exponent;

    NumberScanner(char decimal) {
        this.decimal = (byte) decimal;
    }

    /** The number read last. */
    double value() {
        return value;
    }

    /**
     * Reads the number that starts at {@code from}. Returns the index behind it, or -1 if no number starts there. The bytes
     * must end in one that cannot be part of a number, with eight more behind it.
     */
    int scan(byte[] b, int from) {
        int at = from;
        boolean minus = b[at] == '-';
        if (minus || b[at] == '+') {
            at++;
        }
        mantissa = 0;
        int behind = digits(b, at);
        int digits = behind - at;
        int scale = 0;
        at = behind;
        if (b[at] == decimal) {
            behind = digits(b, at + 1);
            scale = behind - at - 1;
            digits += scale;
            at = behind;
        }
        if (digits == 0) {
            return -1;
        }
        if ((b[at] | 0x20) == 'e') {
            at = exponent(b, at);
            scale -= exponent;
        }
        if (digits <= 18 && mantissa <= EXACT && scale >= -22 && scale <= 22) {
            double size = scale >= 0 ? mantissa / TENS[scale] : mantissa * TENS[-scale];
            value = minus ? -size : size;
        } else {
            value = general(b, from, at);
        }
        return at;
    }

    /** Takes the digits from {@code from} on into the mantissa, eight at a time; returns the index behind them. */
    private int digits(byte[] b, int from) {
        int at = from;
        int n;
        do {
            long bytes = (long) EIGHT.get(b, at) ^ ZEROS;
            n = Long.numberOfTrailingZeros((bytes | (bytes + SIXES)) & HIGH) >>> 3;
            if (n == 0) {
                return at;
            }
            mantissa = mantissa * SHIFT[n] + eight(bytes << (64 - 8 * n));
            at += n;
        } while (n == 8);
        return at;
    }

    /** The number that eight bytes from 0 to 9 spell, the first the most significant: pairs, then fours, then all. */
    private static long eight(long digits) {
        long pairs = digits * 10 + (digits >>> 8);
        long first = (pairs & PAIRS) * 0x000f_4240_0000_0064L;
        long second = ((pairs >>> 16) & PAIRS) * 0x0000_2710_0000_0001L;
        return (first + second) >>> 32;
    }

    /** Reads what follows an e; an e without digits is not part of the number. */
    private int exponent(byte[] b, int e) {
        int at = e + 1;
        boolean minus = b[at] == '-';
        if (minus || b[at] == '+') {
            at++;
        }
        int start = at;
        int size = 0;
        int digit = b[at] - '0';
        while (digit >= 0 && digit <= 9) {
            size = Math.min(size * 10 + digit, 99_999);
            digit = b[++at] - '0';
        }
        exponent = minus ? -size : size;
        if (at == start) {
            exponent = 0;
            return e;
        }
        return at;
    }

    private double general(byte[] b, int from, int to) {
        if (decimal == '.') {
            return JavaDoubleParser.parseDouble(b, from, to - from);
        }
        String text = new String(b, from, to - from, StandardCharsets.US_ASCII);
        return JavaDoubleParser.parseDouble(text.replace((char) decimal, '.'));
    }
}
