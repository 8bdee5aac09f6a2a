package servowright.engine.recording;

/**
 * Range and mean of a signal, over the samples that are finite numbers.
 *
 * @param numbers how many samples were finite
 * @param least the smallest, NaN if there is none
 * @param most the largest, NaN if there is none
 * @param mean the arithmetic mean, NaN if there is none
 */
public record Spread(long numbers, double least, double most, double mean) {

    /** The spread of {@code values}. */
    public static Spread of(double[] values) {
        Gathering gathering = new Gathering();
        for (double value : values) {
            gathering.add(value);
        }
        return gathering.spread();
    }

    /** Collects a spread one sample at a time, for signals that do not fit into memory. */
    public static final class Gathering {
        private long numbers;
        private double least = Double.POSITIVE_INFINITY;
        private double most = Double.NEGATIVE_INFINITY;
        private double sum;
        private double lost;

        /** Takes one sample; the sum is compensated (Neumaier), so that long records keep their mean. */
        public void add(double value) {
            if (!(Math.abs(value) <= Double.MAX_VALUE)) {
                return;
            }
            numbers++;
            if (value < least) {
                least = value;
            }
            if (value > most) {
                most = value;
            }
            double next = sum + value;
            lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
            sum = next;
        }

        /** What was collected so far. */
        public Spread spread() {
            if (numbers == 0) {
                return new Spread(0, Double.NaN, Double.NaN, Double.NaN);
            }
            return new Spread(numbers, least, most, (sum + lost) / numbers);
        }
    }
}
