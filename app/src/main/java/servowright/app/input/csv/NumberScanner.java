package servowright.app.input.csv;

import ch.randelshofer.fastdoubleparser.JavaDoubleParser;
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

    private static final long EXACT = 1L << 53;

    private final byte decimal;
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
     * must end in one that cannot be part of a number.
     */
    int scan(byte[] b, int from) {
        int at = from;
        boolean minus = b[at] == '-';
        if (minus || b[at] == '+') {
            at++;
        }
        int start = at;
        long mantissa = 0;
        int digit = b[at] - '0';
        while (digit >= 0 && digit <= 9) {
            mantissa = mantissa * 10 + digit;
            digit = b[++at] - '0';
        }
        int digits = at - start;
        int scale = 0;
        if (b[at] == decimal) {
            int point = at;
            digit = b[++at] - '0';
            while (digit >= 0 && digit <= 9) {
                mantissa = mantissa * 10 + digit;
                digit = b[++at] - '0';
            }
            scale = at - point - 1;
            digits += scale;
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
