package servowright.engine.numeric;

import java.util.Arrays;

/**
 * Linear least squares with every figure that goes with it.
 *
 * <p>Model: observation i = sum over j of design(i, j) times parameter j, plus an error with zero mean and standard
 * deviation sigma(i). Solved by Householder QR on columns scaled by powers of two, then refined on the augmented system
 * with residuals in twice the working precision (A. Bjorck, "Numerical Methods for Least Squares Problems", 1996,
 * section 2.9.3). Agrees with the NIST StRD linear sets to 9 digits or more, Longley 8, Filip 6.
 *
 * @param status CONVERGED, TOO_FEW_OBSERVATIONS or NOT_DETERMINED; without CONVERGED the figures are NaN
 * @param parameters the coefficients, in the order of the columns
 * @param covariance of the parameters
 * @param residuals observation less fitted value, unweighted, in the order of the observations
 * @param residualSumOfSquares sum of (residual / sigma) squared, sigma 1 when none is given
 * @param residualSd square root of the sum over the degrees of freedom; 0 degrees give NaN
 * @param rSquared 1 - sum / sum about the (weighted) mean; meaningful with a constant term
 * @param rSquaredAboutZero 1 - sum / sum of squares of the observations; the definition without a constant term
 * @param degreesOfFreedom observations less parameters
 * @param conditionNumber of the scaled and weighted design, in the 2-norm
 * @param varianceFactor what the covariance was multiplied by for dependent residuals; 1 until asked for
 */
public record LinearFit(
        FitStatus status,
        Values parameters,
        Covariance covariance,
        Values residuals,
        double residualSumOfSquares,
        double residualSd,
        double rSquared,
        double rSquaredAboutZero,
        int degreesOfFreedom,
        double conditionNumber,
        double varianceFactor)
        implements Regression {

    /** Equal, unknown sigma: the scatter of the residuals gives the covariance. */
    public static LinearFit of(Design design, double[] observed) {
        return LinearSolver.fit(design, observed, ones(observed.length), false);
    }

    /** Sigma known up to a common factor: the scatter of the residuals gives that factor. */
    public static LinearFit weighted(Design design, double[] observed, double[] relativeSigma) {
        return LinearSolver.fit(design, observed, relativeSigma, false);
    }

    /** Sigma known: the covariance follows from it alone, however well or badly the model fits. */
    public static LinearFit withKnownSigma(Design design, double[] observed, double[] sigma) {
        return LinearSolver.fit(design, observed, sigma, true);
    }

    static LinearFit failed(FitStatus status, int observations, int parameters, double conditionNumber) {
        return new LinearFit(
                status,
                Values.unknown(parameters),
                Covariance.unknown(parameters),
                Values.unknown(observations),
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                observations - parameters,
                conditionNumber,
                1);
    }

    /** The fitted value for one row of regressors. */
    public double valueAt(double... regressors) {
        Check.sameLength("a row of regressors", parameters.size(), regressors.length);
        return AccurateSum.dot(regressors, parameters.inside());
    }

    /** Standard error of the fitted value for one row of regressors, with all covariances. */
    public double standardErrorAt(double... regressors) {
        return Math.sqrt(covariance.varianceOf(regressors));
    }

    /**
     * The same fit with the covariance enlarged for residuals that depend on their neighbours.
     *
     * <p>The factor is that of a mean, {@link Whiteness#varianceFactor()}, and also corrects the residual variance for
     * the smaller number of independent samples. It is right for slow regressors (constant, line, low powers of time)
     * and on the safe side for fast ones when neighbours resemble each other. The observations must be in the order and
     * at the even spacing they were taken.
     */
    public LinearFit allowingForDependence() {
        if (!status.converged() || varianceFactor != 1) {
            return this;
        }
        Whiteness whiteness = whiteness();
        return new LinearFit(
                status,
                parameters,
                covariance.scaledBy(whiteness.fullVarianceFactor(parameters.size())),
                residuals,
                residualSumOfSquares,
                residualSd,
                rSquared,
                rSquaredAboutZero,
                degreesOfFreedom,
                conditionNumber,
                whiteness.varianceFactor());
    }

    private static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }
}
