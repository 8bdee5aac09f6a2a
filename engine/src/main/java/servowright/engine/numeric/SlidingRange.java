package servowright.engine.numeric;

/**
 * Largest less smallest value around each sample of a series, in one pass however wide the neighbourhood is.
 *
 * <p>Two queues hold the places that can still become the largest or the smallest: each place enters and leaves each once.
 * <b>Source.</b> D. Lemire, "Streaming maximum-minimum filter using no more than three comparisons per element", Nordic Journal of
 * Computing 13 (2006), the queue it compares itself with (recalled).
 */
public final class SlidingRange {
    private SlidingRange() {}

    /**
     * Ranges over the samples from {@code reach} before to {@code reach} after a place.
     *
     * @return for each place that has them all; the first belongs to the place {@code reach}
     */
    public static double[] of(double[] values, int reach) {
        Check.that(reach >= 0, "a neighbourhood reaches 0 or farther, was ", reach);
        int width = 2 * reach + 1;
        double[] ranges = new double[Math.max(0, values.length - width + 1)];
        Queue most = new Queue(values, 1);
        Queue least = new Queue(values, -1);
        for (int i = 0; i < values.length; i++) {
            most.add(i, i - width);
            least.add(i, i - width);
            if (i >= width - 1) {
                ranges[i - width + 1] = most.first() - least.first();
            }
        }
        return ranges;
    }

    /** Places in falling order of their value, times a sign. */
    private static final class Queue {
        private final double[] values;
        private final int sign;
        private final int[] places;
        private int from;
        private int to;

        Queue(double[] values, int sign) {
            this.values = values;
            this.sign = sign;
            this.places = new int[values.length];
        }

        /** Takes a place in, and lets go what lies at {@code gone} or before. */
        void add(int place, int gone) {
            while (to > from && sign * values[places[to - 1]] <= sign * values[place]) {
                to--;
            }
            places[to++] = place;
            while (places[from] <= gone) {
                from++;
            }
        }

        double first() {
            return values[places[from]];
        }
    }
}
