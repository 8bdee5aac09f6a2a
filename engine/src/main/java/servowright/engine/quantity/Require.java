package servowright.engine.quantity;

import java.util.Locale;

/** Guards of value types. Each names the good case and refuses everything else, so that NaN never passes. */
public final class Require {
    private Require() {}

    /** Returns {@code value} if it is finite and above zero. */
    public static double positive(String what, double value, String unit) {
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw refused(what, "finite and above 0 " + unit, value, unit);
        }
        return value;
    }

    /** Returns {@code value} if it is finite and not below zero. */
    public static double notNegative(String what, double value, String unit) {
        if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
            throw refused(what, "finite and not below 0 " + unit, value, unit);
        }
        return value;
    }

    /** Returns {@code value} if it is neither infinite nor NaN. */
    public static double finite(String what, double value, String unit) {
        if (!Double.isFinite(value)) {
            throw refused(what, "finite", value, unit);
        }
        return value;
    }

    /** Returns {@code value} if it lies in the closed range. */
    public static double within(String what, double least, double most, double value, String unit) {
        if (!(value >= least && value <= most)) {
            throw refused(what, String.format(Locale.ROOT, "from %s to %s %s", least, most, unit), value, unit);
        }
        return value;
    }

    /** Returns {@code value} if it is not below {@code least}. */
    public static int atLeast(String what, int least, int value) {
        if (value < least) {
            throw new IllegalArgumentException(
                    String.format(Locale.ROOT, "%s must be at least %d, was %d", what, least, value));
        }
        return value;
    }

    private static IllegalArgumentException refused(String what, String allowed, double value, String unit) {
        String tail = unit.isEmpty() ? "" : " " + unit;
        return new IllegalArgumentException(
                String.format(Locale.ROOT, "%s must be %s, was %s%s", what, allowed.strip(), value, tail));
    }
}
