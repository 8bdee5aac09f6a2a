package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * Noise about a steady value, cut off at one side. A symmetric noise whose largest value is its most frequent one has its middle in the upper half of
 * that value, and so as much above it as two steps below: where there is some below and nothing above, it was cut off.
 */
final class CutNoise {
    /** Share two steps off and beyond that must have its like at the other side. */
    private static final double BEYOND = 0.03;

    /** So many samples would show it, but for one time in 100. */
    private static final int FEWEST = 150;

    private CutNoise() {}

    /** Whether the samples of a steady value are cut off. */
    static boolean at(double... values) {
        Map<Double, Long> counts = new TreeMap<>();
        Arrays.stream(values).forEach(v -> counts.merge(v, 1L, Long::sum));
        List<Long> rising = List.copyOf(counts.values());
        return values.length >= FEWEST && (leads(rising, 0, 1) || leads(rising, rising.size() - 1, -1));
    }

    /** Whether the value at one end is the most frequent, and enough lie two steps off and beyond. */
    private static boolean leads(List<Long> counts, int end, int inwards) {
        long all = counts.stream().mapToLong(n -> n).sum();
        long most = counts.stream().mapToLong(n -> n).max().orElse(0);
        long beyond = counts.size() < 3 ? 0 : all - counts.get(end) - counts.get(end + inwards);
        return counts.get(end) == most && most > all / (double) FEWEST && beyond > BEYOND * all;
    }
}
