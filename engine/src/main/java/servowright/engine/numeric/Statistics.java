package servowright.engine.numeric;

import java.util.Arrays;

/** Figures of samples. Sums are carried in twice the working precision. */
public final class Statistics {
    /** 1 / (normal quantile of 3/4): turns a median absolute deviation into a standard deviation of a normal sample. */
    private static final double NORMAL_PER_MAD = 1.482602218505602;

    private Statistics() {}

    public static double mean(double... sample) {
        needs(1, sample);
        return AccurateSum.of(sample) / sample.length;
    }

    /** Unbiased variance, with n - 1. */
    public static double variance(double... sample) {
        return covariance(sample, sample);
    }

    /** Square root of the unbiased variance. */
    public static double standardDeviation(double... sample) {
        return Math.sqrt(variance(sample));
    }

    /** Standard deviation of the mean of independent values. */
    public static double standardError(double... sample) {
        return standardDeviation(sample) / Math.sqrt(sample.length);
    }

    /** Root of the mean square about zero. */
    public static double rootMeanSquare(double... sample) {
        needs(1, sample);
        return Math.sqrt(AccurateSum.dot(sample, sample) / sample.length);
    }

    /** Unbiased covariance, with n - 1. */
    public static double covariance(double[] a, double[] b) {
        needs(2, a);
        Check.sameLength("the second sample", a.length, b.length);
        double meanA = mean(a);
        double meanB = mean(b);
        AccurateSum products = new AccurateSum();
        AccurateSum restA = new AccurateSum();
        AccurateSum restB = new AccurateSum();
        for (int i = 0; i < a.length; i++) {
            double differenceA = a[i] - meanA;
            double differenceB = b[i] - meanB;
            products.addProduct(differenceA, differenceB);
            restA.add(differenceA);
            restB.add(differenceB);
        }
        return (products.value() - restA.value() * restB.value() / a.length) / (a.length - 1);
    }

    /** Covariance matrix of several samples taken together: element i of each belongs to one occasion. */
    public static Covariance covariance(double[]... samples) {
        double[][] matrix = new double[samples.length][samples.length];
        for (int i = 0; i < samples.length; i++) {
            for (int j = 0; j <= i; j++) {
                matrix[i][j] = covariance(samples[i], samples[j]);
                matrix[j][i] = matrix[i][j];
            }
        }
        return Covariance.of(matrix);
    }

    /** Pearson's coefficient; NaN when one sample does not vary. */
    public static double correlation(double[] a, double[] b) {
        return covariance(a, b) / Math.sqrt(variance(a) * variance(b));
    }

    /** Correlation of a sample with itself a number of places later, about its mean; NaN when it does not vary. */
    public static double autocorrelation(double[] sample, int lag) {
        needs(2, sample);
        Check.that(lag >= 0 && lag < sample.length, "a lag must lie in the sample, was ", lag);
        double mean = mean(sample);
        AccurateSum products = new AccurateSum();
        AccurateSum squares = new AccurateSum();
        for (int i = 0; i < sample.length; i++) {
            double here = sample[i] - mean;
            squares.addProduct(here, here);
            if (i >= lag) {
                products.addProduct(here, sample[i - lag] - mean);
            }
        }
        return products.value() / squares.value();
    }

    public static double median(double... sample) {
        return quantile(sample, 0.5);
    }

    /** Median of the distances from the median. */
    public static double medianAbsoluteDeviation(double... sample) {
        double median = median(sample);
        return median(Arrays.stream(sample).map(v -> Math.abs(v - median)).toArray());
    }

    /** The standard deviation that a normal sample with this median absolute deviation has: not moved by outliers. */
    public static double robustStandardDeviation(double... sample) {
        return NORMAL_PER_MAD * medianAbsoluteDeviation(sample);
    }

    /**
     * The value that the given share of the sample does not exceed, linear between the sorted values.
     *
     * <p>Position (n - 1) p from the smallest: type 7 of R. J. Hyndman, Y. Fan, "Sample Quantiles in Statistical
     * Packages", The American Statistician 50 (1996).
     */
    public static double quantile(double[] sample, double share) {
        needs(1, sample);
        Check.that(share >= 0 && share <= 1, "a share must lie from 0 to 1, was ", share);
        double[] sorted = sample.clone();
        Arrays.sort(sorted);
        double position = share * (sorted.length - 1);
        int below = (int) position;
        int above = Math.min(below + 1, sorted.length - 1);
        return sorted[below] + (position - below) * (sorted[above] - sorted[below]);
    }

    private static void needs(int least, double[] sample) {
        if (sample.length < least) {
            throw new IllegalArgumentException("a sample needs at least " + least + " values, has " + sample.length);
        }
        Check.finite("a sample", sample);
    }
}
