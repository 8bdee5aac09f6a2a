package servowright.engine.numeric;

import java.util.Arrays;

/**
 * How much the residuals of a fit, in the order they were taken, depend on their neighbours.
 *
 * <p>Dependent residuals carry less information than their number says. The variance of a fitted coefficient whose
 * regressor oscillates with f cycles per sample is larger than the plain least-squares one by the ratio of the residual
 * spectrum at f to its mean. The spectrum is that of an autoregression of the residuals,
 *
 * <pre>  g(f) = innovation / |1 - sum over j of a(j) exp(-2 pi i f j)|^2</pre>
 *
 * with innovation the variance that the regression leaves over the variance there was. For a first-order process g(0) is
 * the usual factor of a mean, (1 + r)/(1 - r). Factors below 1 are not used: they would let chance shrink an uncertainty.
 *
 * <p>The coefficients come from the Yule-Walker equations by Levinson's recursion; the order, 0 to {@value #MOST_ORDER},
 * is the one with the least corrected Akaike criterion (C. M. Hurvich, C.-L. Tsai, Biometrika 76, 1989, from memory).
 * White residuals mostly get order 0 and the factor 1. Limits: with p fitted parameters and fewer than about 20 p
 * effective samples the factor comes out too small, since the fit has taken the slowest part of the dependence out of
 * the residuals; a single line left in the residuals raises the factor at its own frequency only.
 *
 * @param count number of residuals
 * @param lagOneCorrelation of neighbours
 * @param durbinWatson sum of squared differences of neighbours over the sum of squares: about 2 when white, near 0 for
 *     slow residuals, near 4 for alternating ones (J. Durbin, G. S. Watson, Biometrika 37, 1950)
 * @param autoregression the coefficients a(1), a(2), ...; none when white
 * @param innovation share of the variance that the autoregression does not explain
 */
public record Whiteness(
        int count, double lagOneCorrelation, double durbinWatson, Values autoregression, double innovation) {
    private static final int MOST_ORDER = 24;

    /** Residuals per coefficient that are asked for at least. */
    private static final int SAMPLES_PER_ORDER = 8;

    /** Looks at residuals (zero mean expected) of evenly spaced samples. */
    public static Whiteness of(double[] residuals) {
        Check.finite("residuals", residuals);
        int n = residuals.length;
        double power = laggedProduct(residuals, 0);
        if (n < 2 || power == 0) {
            return new Whiteness(n, 0, 2, Values.of(), 1);
        }
        double differences = 0;
        for (int i = 1; i < n; i++) {
            double step = residuals[i] - residuals[i - 1];
            differences += step * step;
        }
        double[] correlations = new double[1 + Math.max(1, Math.min(MOST_ORDER, n / SAMPLES_PER_ORDER))];
        for (int lag = 0; lag < correlations.length; lag++) {
            correlations[lag] = laggedProduct(residuals, lag) / power;
        }
        return autoregressed(n, differences / power, correlations);
    }

    static Whiteness unknown(int count) {
        return new Whiteness(count, Double.NaN, Double.NaN, Values.of(), Double.NaN);
    }

    /** Levinson's recursion over the orders, keeping the best. */
    private static Whiteness autoregressed(int n, double durbinWatson, double[] correlations) {
        double[] coefficients = new double[0];
        Values best = Values.of();
        double bestInnovation = 1;
        double bestCriterion = criterion(n, 0, 1);
        double innovation = 1;
        for (int order = 1; order < correlations.length && order < n - 2; order++) {
            double partial = correlations[order];
            for (int j = 1; j < order; j++) {
                partial -= coefficients[j - 1] * correlations[order - j];
            }
            partial /= innovation;
            double[] next = Arrays.copyOf(coefficients, order);
            next[order - 1] = partial;
            for (int j = 1; j < order; j++) {
                next[j - 1] -= partial * coefficients[order - j - 1];
            }
            coefficients = next;
            innovation *= 1 - partial * partial;
            if (!(innovation > 1e-12)) {
                break;
            }
            double criterion = criterion(n, order, innovation);
            if (criterion < bestCriterion) {
                bestCriterion = criterion;
                bestInnovation = innovation;
                best = Values.of(coefficients);
            }
        }
        return new Whiteness(n, correlations[1], durbinWatson, best, bestInnovation);
    }

    private static double criterion(int n, int order, double innovation) {
        return n * Math.log(innovation) + 2.0 * (order + 1) * n / (n - order - 2);
    }

    private static double laggedProduct(double[] v, int lag) {
        double even = 0;
        double odd = 0;
        int i = lag;
        for (; i + 1 < v.length; i += 2) {
            even += v[i] * v[i - lag];
            odd += v[i + 1] * v[i + 1 - lag];
        }
        if (i < v.length) {
            even += v[i] * v[i - lag];
        }
        return even + odd;
    }

    /** Factor on the variance of a coefficient whose regressor has this many cycles per sample; at least 1. */
    public double varianceFactorAt(double cyclesPerSample) {
        double real = 1;
        double imaginary = 0;
        for (int j = 1; j <= autoregression.size(); j++) {
            double angle = 2 * Math.PI * cyclesPerSample * j;
            real -= autoregression.at(j - 1) * Math.cos(angle);
            imaginary += autoregression.at(j - 1) * Math.sin(angle);
        }
        return Math.max(1, innovation / (real * real + imaginary * imaginary));
    }

    /** Factor on the variance of a mean or of a coefficient of a slow regressor; at least 1. */
    public double varianceFactor() {
        return varianceFactorAt(0);
    }

    /** Number of independent samples that would fix a mean as well as these do. */
    public double effectiveCount() {
        return count / varianceFactor();
    }

    /**
     * Factor on the whole covariance of a fit with slow regressors: the variance factor, times the correction of the
     * residual variance, which was found with n - p degrees of freedom where only n - p g are left.
     */
    double fullVarianceFactor(int parameters) {
        double factor = varianceFactor();
        double plain = Math.max(1, count - parameters);
        return factor * plain / Math.max(1, count - parameters * factor);
    }

    /**
     * Degrees of freedom of a variance that was enlarged by a factor g found here: those of a scatter over n/g - p
     * independent values and of g itself, combined as relative variances.
     *
     * <p>For a first-order process with coefficient r the estimate of g(0) has the relative variance
     * 4/((1 - r^2) n), about g/n for r near 1: 2n/g degrees of freedom. That is taken once per coefficient, and weighted
     * by how much g differs from 1. At least 1.
     */
    double degreesOfFreedom(double factor, int parameters) {
        double scatter = 1 / Math.max(1, count / factor - parameters);
        double weight = (factor - 1) / factor;
        double spectrum = weight * weight * autoregression.size() * factor / (2.0 * count);
        return Math.max(1, 1 / (scatter + spectrum));
    }
}
