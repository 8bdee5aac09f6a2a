package servowright.engine.numeric;

/** Refuses input that can only be a mistake of the calling code. */
final class Check {
    private Check() {}

    static void that(boolean good, String sentence) {
        if (!good) {
            throw new IllegalArgumentException(sentence);
        }
    }

    static void sameLength(String what, int expected, int actual) {
        that(expected == actual, what + " must have length " + expected + ", has " + actual);
    }

    static void finite(String what, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                throw new IllegalArgumentException(what + " must be finite, has " + values[i] + " at index " + i);
            }
        }
    }

    static void positive(String what, double[] values) {
        for (int i = 0; i < values.length; i++) {
            if (!(values[i] > 0 && values[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException(
                        what + " must be finite and above 0, has " + values[i] + " at index " + i);
            }
        }
    }

    static double positive(String what, double value) {
        that(value > 0 && value < Double.POSITIVE_INFINITY, what + " must be finite and above 0, was " + value);
        return value;
    }

    static double finite(String what, double value) {
        that(Double.isFinite(value), what + " must be finite, was " + value);
        return value;
    }

    static double openUnit(String what, double value) {
        that(value > 0 && value < 1, what + " must lie between 0 and 1, was " + value);
        return value;
    }
}
