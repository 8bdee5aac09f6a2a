package servowright.engine.numeric;

import java.util.List;

/**
 * Refuses input that can only be a mistake of the calling code. Sentences are put together only when they are needed: a figure
 * takes longer to write down than to compute.
 */
final class Check {
    private Check() {}

    static void that(boolean good, String sentence) {
        if (!good) {
            throw new IllegalArgumentException(sentence);
        }
    }

    /** With the value that is wrong at the end of the sentence. */
    static void that(boolean good, String sentence, double was) {
        if (!good) {
            throw new IllegalArgumentException(sentence + was);
        }
    }

    static void that(boolean good, String sentence, long was) {
        if (!good) {
            throw new IllegalArgumentException(sentence + was);
        }
    }

    static void that(boolean good, String sentence, List<?> was) {
        if (!good) {
            throw new IllegalArgumentException(sentence + was);
        }
    }

    static void that(boolean good, String sentence, double one, double other) {
        if (!good) {
            throw new IllegalArgumentException(sentence + one + " and " + other);
        }
    }

    static void sameLength(String what, int expected, int actual) {
        if (expected != actual) {
            throw new IllegalArgumentException(what + " must have length " + expected + ", has " + actual);
        }
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
        if (!(value > 0 && value < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(what + " must be finite and above 0, was " + value);
        }
        return value;
    }

    static double finite(String what, double value) {
        if (!Double.isFinite(value)) {
            throw new IllegalArgumentException(what + " must be finite, was " + value);
        }
        return value;
    }

    static double openUnit(String what, double value) {
        if (!(value > 0 && value < 1)) {
            throw new IllegalArgumentException(what + " must lie between 0 and 1, was " + value);
        }
        return value;
    }
}
