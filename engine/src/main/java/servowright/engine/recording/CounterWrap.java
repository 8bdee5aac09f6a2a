package servowright.engine.recording;

import java.util.Optional;

/**
 * A counter that started again at 0 (or at its lowest value) because it ran out of bits.
 *
 * @param modulus how many values the counter has
 * @param count how often it wrapped, in either direction
 * @param first row behind the first wrap, from 0
 */
public record CounterWrap(double modulus, long count, int first) {
    private static final double[] MODULI = {
        0x1p8, 0x1p10, 0x1p12, 0x1p14, 0x1p15, 0x1p16, 0x1p20, 0x1p24, 0x1p31, 0x1p32
    };

    /**
     * The wrap that a column shows, if it shows one: all values are whole numbers within the range of one counter, signed or
     * not; the column has steps of nearly a whole range; and every other step is small against the range.
     */
    public static Optional<CounterWrap> find(double[] counts) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (double count : counts) {
            if (count != Math.rint(count)) {
                return Optional.empty();
            }
            least = Math.min(least, count);
            most = Math.max(most, count);
        }
        for (double modulus : MODULI) {
            boolean unsigned = least >= 0 && most < modulus;
            boolean signed = least < 0 && least >= -modulus / 2 && most < modulus / 2;
            if ((unsigned || signed) && most - least > 0.9 * modulus) {
                return wraps(counts, modulus);
            }
        }
        return Optional.empty();
    }

    private static Optional<CounterWrap> wraps(double[] counts, double modulus) {
        long wraps = 0;
        int first = -1;
        for (int i = 1; i < counts.length; i++) {
            double step = Math.abs(counts[i] - counts[i - 1]);
            boolean wrapped = step > 0.875 * modulus;
            if (!wrapped && step >= 0.125 * modulus) {
                return Optional.empty();
            }
            first = wrapped && wraps == 0 ? i : first;
            wraps += wrapped ? 1 : 0;
        }
        return wraps == 0 ? Optional.empty() : Optional.of(new CounterWrap(modulus, wraps, first));
    }

    /** The column as a counter with enough bits would have it: steps of more than half the range are taken back. */
    public static double[] unwrapped(double[] counts, double modulus) {
        double[] whole = counts.clone();
        double turns = 0;
        for (int i = 1; i < counts.length; i++) {
            double step = counts[i] - counts[i - 1];
            if (step < -modulus / 2) {
                turns++;
            } else if (step > modulus / 2) {
                turns--;
            }
            whole[i] = counts[i] + turns * modulus;
        }
        return whole;
    }
}
