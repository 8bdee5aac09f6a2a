package servowright.engine.numeric;

import java.util.Arrays;
import java.util.Optional;

/**
 * A linear fit whose covariance comes from leaving out one stretch of neighbours after the other.
 *
 * <p><b>Formula.</b> With m stretches, \( C = \frac{m-1}{m} \sum_i (\theta_i - \bar\theta)(\theta_i - \bar\theta)^T \);
 * \( \theta_i - \theta = -(X^T X - X_i^T X_i)^{-1} X_i^T e_i \) with e the residuals of the whole fit, exactly. <b>Valid
 * for</b> residuals that depend on each other over less than a stretch; it sees a model that bends where the data do not,
 * as far as that moves from stretch to stretch. Coverage factors take m − 1 degrees of freedom. <b>Source.</b> H. R. Künsch,
 * "The jackknife and the bootstrap for general stationary observations", Annals of Statistics 17 (1989), blockwise
 * jackknife (recalled).
 *
 * @param fit        of all observations
 * @param covariance of its parameters
 * @param blocks     m
 */
public record BlockJackknife(LinearFit fit, Covariance covariance, int blocks) {
    /** Fewer observations than this for each stretch and parameter determine nothing. */
    private static final int LEAST_PER_BLOCK = 2;

    /** Fits; empty when the design does not determine the parameters, with or without one of the stretches. */
    public static Optional<BlockJackknife> of(Design design, double[] observed, int blocks) {
        Check.that(blocks >= 2, "a jackknife needs at least 2 stretches, was ", blocks);
        int n = observed.length;
        int p = design.parameters();
        if (n < LEAST_PER_BLOCK * blocks || n <= p + blocks) {
            return Optional.empty();
        }
        LinearFit fit = LinearFit.of(design, observed);
        if (!fit.status().converged()) {
            return Optional.empty();
        }
        double[] scale = norms(design);
        double[][] whole = gram(design, scale, 0, n);
        double[][] departures = new double[blocks][];
        for (int b = 0; b < blocks; b++) {
            GivenUp.check();
            int from = (int) ((long) n * b / blocks);
            int to = (int) ((long) n * (b + 1) / blocks);
            Optional<double[]> departure = departure(design, fit, scale, whole, from, to);
            if (departure.isEmpty()) {
                return Optional.empty();
            }
            departures[b] = departure.get();
        }
        return Optional.of(new BlockJackknife(fit, covariance(departures, p), blocks));
    }

    public double parameter(int j) {
        return fit.parameter(j);
    }

    public double standardError(int j) {
        return covariance.standardDeviation(j);
    }

    /** Degrees of freedom for a coverage factor. */
    public double degreesOfFreedom() {
        return blocks - 1.0;
    }

    private static Optional<double[]> departure(
            Design design, LinearFit fit, double[] scale, double[][] whole, int from, int to) {
        int p = scale.length;
        double[][] part = gram(design, scale, from, to);
        double[] moment = new double[p];
        double[][] rest = new double[p][p];
        for (int j = 0; j < p; j++) {
            double[] column = design.column(j);
            for (int i = from; i < to; i++) {
                moment[j] -= column[i] / scale[j] * fit.residuals().at(i);
            }
            for (int k = 0; k < p; k++) {
                rest[k][j] = whole[k][j] - part[k][j];
            }
        }
        double[] ones = new double[p];
        Arrays.fill(ones, 1);
        LinearFit solved = LinearFit.withKnownSigma(Design.ofColumns(rest), moment, ones);
        if (!solved.status().converged()) {
            return Optional.empty();
        }
        double[] departure = solved.parameters().toArray();
        for (int j = 0; j < p; j++) {
            departure[j] /= scale[j];
        }
        return Optional.of(departure);
    }

    private static double[] norms(Design design) {
        double[] norms = new double[design.parameters()];
        for (int j = 0; j < norms.length; j++) {
            double norm =
                    Math.sqrt(Arrays.stream(design.column(j)).map(v -> v * v).sum());
            norms[j] = norm > 0 ? norm : 1;
        }
        return norms;
    }

    private static double[][] gram(Design design, double[] scale, int from, int to) {
        int p = scale.length;
        double[][] gram = new double[p][p];
        for (int j = 0; j < p; j++) {
            for (int k = 0; k <= j; k++) {
                double[] a = design.column(j);
                double[] b = design.column(k);
                double sum = 0;
                for (int i = from; i < to; i++) {
                    sum += a[i] * b[i];
                }
                gram[j][k] = sum / (scale[j] * scale[k]);
                gram[k][j] = gram[j][k];
            }
        }
        return gram;
    }

    private static Covariance covariance(double[][] departures, int p) {
        int m = departures.length;
        double[] mean = new double[p];
        for (double[] departure : departures) {
            for (int j = 0; j < p; j++) {
                mean[j] += departure[j] / m;
            }
        }
        double[][] sum = new double[p][p];
        for (double[] departure : departures) {
            for (int j = 0; j < p; j++) {
                for (int k = 0; k < p; k++) {
                    sum[j][k] += (departure[j] - mean[j]) * (departure[k] - mean[k]) * (m - 1.0) / m;
                }
            }
        }
        return Covariance.of(sum);
    }
}
