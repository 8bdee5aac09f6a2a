package servowright.app.input.csv;

import java.math.BigDecimal;
import java.math.MathContext;

/** Numbers as the remarks and questions of the reader write them. */
final class Shown {
    private static final MathContext DIGITS = new MathContext(7);

    private Shown() {}

    /** At most seven digits, without trailing zeros. */
    static String number(double value) {
        if (value == 0 || !Double.isFinite(value)) {
            return value == 0 ? "0" : Double.toString(value);
        }
        BigDecimal shown = new BigDecimal(value).round(DIGITS).stripTrailingZeros();
        boolean plain = Math.abs(value) >= 1e-4 && Math.abs(value) < 1e9;
        return plain ? shown.toPlainString() : shown.toString();
    }

    /** A whole number. */
    static String whole(double value) {
        return BigDecimal.valueOf(Math.rint(value)).toBigInteger().toString();
    }

    /** A time with the unit that suits it. */
    static String seconds(double seconds) {
        double size = Math.abs(seconds);
        if (size == 0 || size >= 1) {
            return number(seconds) + " s";
        }
        if (size >= 1e-3) {
            return number(seconds * 1e3) + " ms";
        }
        return size >= 1e-6 ? number(seconds * 1e6) + " us" : number(seconds * 1e9) + " ns";
    }
}
