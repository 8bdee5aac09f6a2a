package servowright.engine.numeric;

import java.util.Arrays;

/**
 * Nonlinear least squares with every figure that goes with it.
 *
 * <p>Levenberg-Marquardt with scaled parameters, ended by Gauss-Newton steps through a QR decomposition until the
 * parameters stand still; see {@link NonlinearSolver} for the sources and for what counts as converged. A minimum is
 * local: nothing here can tell that a better one lies elsewhere, and a start far off can lead to a wrong one. Agrees
 * with the 27 NIST StRD nonlinear sets to 6 digits or more from their near start, and from their far start either
 * agrees or says that it did not converge.
 *
 * @param status only CONVERGED carries an answer; otherwise the parameters are the best ones reached and covariance
 *     and standard errors are NaN
 * @param parameters in the order of the start
 * @param covariance first order, from the derivatives at the solution
 * @param residuals observation less prediction, unweighted
 * @param residualSumOfSquares sum of (residual / sigma) squared, sigma 1 when none is given
 * @param residualSd square root of the sum over the degrees of freedom
 * @param degreesOfFreedom observations less parameters
 * @param conditionNumber of the derivatives with columns scaled to length 1
 * @param iterations steps tried
 * @param varianceFactor what the covariance was multiplied by for dependent residuals; 1 until asked for
 */
public record NonlinearFit(
        FitStatus status,
        Values parameters,
        Covariance covariance,
        Values residuals,
        double residualSumOfSquares,
        double residualSd,
        int degreesOfFreedom,
        double conditionNumber,
        int iterations,
        double varianceFactor)
        implements Regression {

    /** Equal, unknown sigma: the scatter of the residuals gives the covariance. */
    public static NonlinearFit of(NonlinearModel model, double[] observed, double... start) {
        double[] ones = new double[observed.length];
        Arrays.fill(ones, 1);
        return NonlinearSolver.fit(model, observed, ones, start, false);
    }

    /** Sigma known up to a common factor: the scatter of the residuals gives that factor. */
    public static NonlinearFit weighted(
            NonlinearModel model, double[] observed, double[] relativeSigma, double... start) {
        return NonlinearSolver.fit(model, observed, relativeSigma, start, false);
    }

    /** Sigma known: the covariance follows from it alone. */
    public static NonlinearFit withKnownSigma(
            NonlinearModel model, double[] observed, double[] sigma, double... start) {
        return NonlinearSolver.fit(model, observed, sigma, start, true);
    }

    /** The same fit with the covariance enlarged for dependent residuals, as {@link LinearFit#allowingForDependence}. */
    public NonlinearFit allowingForDependence() {
        if (!status.converged() || varianceFactor != 1) {
            return this;
        }
        Whiteness whiteness = whiteness();
        return new NonlinearFit(
                status,
                parameters,
                covariance.scaledBy(whiteness.fullVarianceFactor(parameters.size())),
                residuals,
                residualSumOfSquares,
                residualSd,
                degreesOfFreedom,
                conditionNumber,
                iterations,
                whiteness.varianceFactor());
    }
}
