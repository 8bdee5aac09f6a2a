package servowright.engine.numeric;

import java.util.Arrays;

/** A closed interval of the number line. */
public record Interval(double low, double high) {
    public Interval {
        Check.that(low <= high, "an interval needs low <= high, was ", low, high);
    }

    public double width() {
        return high - low;
    }

    public double middle() {
        return 0.5 * (low + high);
    }

    public boolean contains(double value) {
        return value >= low && value <= high;
    }

    /**
     * The shortest interval that holds the given share of a sample.
     *
     * <p>JCGM 101:2008, 7.7.4: with M sorted values and q = pM rounded, the narrowest of the intervals from value r to
     * value r + q. Flat where the density is flat, so its ends scatter more than those of the symmetric interval.
     */
    public static Interval shortest(double[] sample, double probability) {
        double[] sorted = sortedForInterval(sample, probability);
        int span = span(sorted.length, probability);
        int best = 0;
        for (int i = 0; i + span < sorted.length; i++) {
            if (sorted[i + span] - sorted[i] < sorted[best + span] - sorted[best]) {
                best = i;
            }
        }
        return new Interval(sorted[best], sorted[best + span]);
    }

    /** The interval that leaves the same share of a sample out on either side: JCGM 101:2008, 7.7.2. */
    public static Interval symmetric(double[] sample, double probability) {
        double[] sorted = sortedForInterval(sample, probability);
        int span = span(sorted.length, probability);
        int start = (sorted.length - span) / 2;
        return new Interval(sorted[start], sorted[Math.min(start + span, sorted.length - 1)]);
    }

    private static double[] sortedForInterval(double[] sample, double probability) {
        Check.that(sample.length >= 2, "an interval needs at least 2 values");
        Check.finite("a sample", sample);
        Check.openUnit("a probability", probability);
        double[] sorted = sample.clone();
        Arrays.sort(sorted);
        return sorted;
    }

    private static int span(int count, double probability) {
        return (int) Math.min(count - 1, Math.round(probability * count));
    }
}
