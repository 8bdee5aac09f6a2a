package servowright.engine.numeric;

import java.util.Arrays;

/**
 * Covariance of a linear fit of derivatives over {@link SmoothWindows}, whose residuals come from noise of the signal that was
 * differentiated, and from noise that was not.
 *
 * <p><b>Formula.</b> Windows sin² that overlap by half give the first kind the correlation −1/2 between neighbours, the second 1/6, and none beyond. With
 * variances a and b, \( C = G^{-1} \left( a (S_0 - \tfrac{1}{2} S_1) + b (S_0 + \tfrac{1}{6} S_1) \right) G^{-1} \), \( S_0 = G = \sum x_k x_k^T \)
 * and \( S_1 = \sum (x_k x_{k+1}^T + x_{k+1} x_k^T) \). The first kind returns with the other sign and adds up to nothing but its ends, a, over any number of
 * neighbours; the second adds up. So \( a + b \) is the variance of the residuals, and sums over L neighbours have the variance \( a + b (L + (L - 1)/3) \).
 * Correlations of neighbours alone tell b ten times less well, and a b that is scatter would widen everything. <b>Valid for</b> many more rows
 * than L. <b>Source.</b> Integrals of the windows, worked out here: ∫ sin² cos² over ∫ sin⁴ is 1/3 over half the length; least squares under a known correlation of
 * the error.
 */
public final class ReturningNoise {
    /** L at best; half of it, and so on, where gaps leave too few such sums. */
    private static final int SUMMED = 40;

    private static final int FEWEST_SUMMED = 5;
    private static final int FEWEST_SUMS = 8;

    private static final double RETURNED = -0.5;
    private static final double SHARED = 1 / 6.0;

    private ReturningNoise() {}

    /**
     * The covariance.
     *
     * @param positions rising, one per row: neighbours are 1 apart
     */
    public static Covariance of(Design design, LinearFit fit, int... positions) {
        int n = positions.length;
        int p = design.parameters();
        Check.sameLength("positions", design.observations(), n);
        double variance = fit.residualSumOfSquares() / (n - p);
        double adding = adding(fit.residuals(), variance, positions);
        double returning = variance - adding;
        double[][] middle = new double[p][p];
        for (int k = 0; k < n; k++) {
            add(middle, design, k, k, variance / 2);
            if (k + 1 < n && positions[k + 1] == positions[k] + 1) {
                add(middle, design, k, k + 1, returning * RETURNED + adding * SHARED);
            }
        }
        return Covariance.of(middle)
                .through(fit.covariance().scaledBy(1 / variance).toRows());
    }

    /** Correlation of residuals that are neighbours. */
    public static double correlation(LinearFit fit, int... positions) {
        return product(fit.residuals(), positions, 1) / (fit.residualSumOfSquares() / positions.length);
    }

    /** Mean product of residuals so many positions apart. */
    private static double product(Values residuals, int[] positions, int lag) {
        double sum = 0;
        int count = 0;
        int other = 0;
        for (int k = 0; k < positions.length; k++) {
            while (positions[k] - positions[other] > lag) {
                other++;
            }
            if (positions[k] - positions[other] == lag) {
                sum += residuals.at(k) * residuals.at(other);
                count++;
            }
        }
        return count == 0 ? 0 : sum / count;
    }

    /** Adds the product of two rows, and its transpose. */
    private static void add(double[][] middle, Design design, int one, int other, double weight) {
        for (int i = 0; i < middle.length; i++) {
            for (int j = 0; j < middle.length; j++) {
                double product = weight * design.column(i)[one] * design.column(j)[other];
                middle[i][j] += product;
                middle[j][i] += product;
            }
        }
    }

    /** b, from sums of neighbours; where gaps leave none, all of it is taken to add up. */
    private static double adding(Values residuals, double variance, int... positions) {
        for (int summed = SUMMED; summed >= FEWEST_SUMMED; summed /= 2) {
            double[] sums = sums(residuals, summed, positions);
            if (sums.length >= FEWEST_SUMS) {
                double square = Arrays.stream(sums).map(s -> s * s).average().orElse(0);
                double grows = summed + (summed - 1) / 3.0 - 1;
                return Math.min(variance, Math.max(0, (square - variance) / grows));
            }
        }
        return variance;
    }

    /** Sums over so many neighbours without a gap. */
    private static double[] sums(Values residuals, int summed, int... positions) {
        double[] sums = new double[positions.length];
        int count = 0;
        int from = 0;
        for (int k = 0; k < positions.length; k++) {
            from = k > from && positions[k] != positions[k - 1] + 1 ? k : from;
            if (k - from + 1 == summed) {
                for (int i = from; i <= k; i++) {
                    sums[count] += residuals.at(i);
                }
                count++;
                from = k + 1;
            }
        }
        return Arrays.copyOf(sums, count);
    }
}
