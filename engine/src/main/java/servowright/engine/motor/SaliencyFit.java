package servowright.engine.motor;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Require;

/**
 * Both inductances from readings between two terminals at several rotor angles.
 *
 * <p><b>Formula.</b> L(θ) = m + c cos 2θ + s sin 2θ by least squares; A = √(c² + s²), L_d = (m − A)/2, L_q = (m + A)/2.
 * Standard deviations by first-order propagation from the scatter of the readings. <b>Valid for</b> A well above the
 * scatter: noise alone makes A positive, so a small saliency comes out too large. <b>Source.</b> {@link Saliency}.
 *
 * @param dHenry            inductance on the magnet axis, per phase
 * @param qHenry            inductance between the magnets, per phase
 * @param ofBoth            covariance of the two, H²
 * @param leastElectricalRad electrical angle at which the reading is least, from 0 to below π
 * @param residuals         readings less fitted, H
 * @param freedom           degrees of freedom of the covariance
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: the fit of one set of readings
public record SaliencyFit(
        double dHenry,
        double qHenry,
        Covariance ofBoth,
        double leastElectricalRad,
        double[] residuals,
        double freedom) {

    /** Below this variance of the unit vector at 2θ in its worst direction the angles stand on a line; evenly spread it is 1/2. */
    private static final double LEAST_SPREAD = 0.02;

    /**
     * Fits the readings; empty if the angles do not determine the three terms or L_d would not be above zero.
     *
     * @param electricalRad electrical rotor angles, from any zero
     * @param loopHenry     readings between the two terminals
     */
    public static Optional<SaliencyFit> of(double[] electricalRad, double[] loopHenry) {
        Require.atLeast("readings", 4, loopHenry.length);
        double[] ones = new double[electricalRad.length];
        Arrays.fill(ones, 1);
        double[] cosines =
                Arrays.stream(electricalRad).map(a -> Math.cos(2 * a)).toArray();
        double[] sines = Arrays.stream(electricalRad).map(a -> Math.sin(2 * a)).toArray();
        LinearFit fit = LinearFit.of(Design.ofColumns(ones, cosines, sines), loopHenry);
        if (!fit.status().converged() || leastSpread(cosines, sines) < LEAST_SPREAD) {
            return Optional.empty();
        }
        double mean = fit.parameter(0);
        double cosine = fit.parameter(1);
        double sine = fit.parameter(2);
        double swing = Math.hypot(cosine, sine);
        if (!(mean > swing && swing > 0)) {
            return Optional.empty();
        }
        double[] onMean = {0.5, 0, 0};
        double[] onSwing = {0, cosine / (2 * swing), sine / (2 * swing)};
        return Optional.of(new SaliencyFit(
                (mean - swing) / 2,
                (mean + swing) / 2,
                ofBoth(fit.covariance(), onMean, onSwing),
                Saliency.axisAngle(-sine, -cosine),
                fit.residuals().toArray(),
                fit.degreesOfFreedom()));
    }

    /** Smaller eigenvalue of the covariance of cosine and sine. */
    private static double leastSpread(double[] cosines, double[] sines) {
        double c = Statistics.variance(cosines);
        double s = Statistics.variance(sines);
        double meanC = Statistics.mean(cosines);
        double meanS = Statistics.mean(sines);
        double both = 0;
        for (int i = 0; i < cosines.length; i++) {
            both += (cosines[i] - meanC) * (sines[i] - meanS) / (cosines.length - 1);
        }
        return (c + s) / 2 - Math.hypot((c - s) / 2, both);
    }

    private static Covariance ofBoth(Covariance terms, double[] onMean, double[] onSwing) {
        double[] onD = new double[onMean.length];
        double[] onQ = new double[onMean.length];
        for (int i = 0; i < onMean.length; i++) {
            onD[i] = onMean[i] - onSwing[i];
            onQ[i] = onMean[i] + onSwing[i];
        }
        // With D = M − S and Q = M + S the covariance of the two is Var(M) − Var(S).
        double both = terms.varianceOf(onMean) - terms.varianceOf(onSwing);
        return Covariance.of(new double[][] {{terms.varianceOf(onD), both}, {both, terms.varianceOf(onQ)}});
    }

    /** Standard deviation of the inductance on the magnet axis, H. */
    public double dStandardHenry() {
        return ofBoth.standardDeviation(0);
    }

    /** Standard deviation of the inductance between the magnets, H. */
    public double qStandardHenry() {
        return ofBoth.standardDeviation(1);
    }

    /** How far the swing over the angle, L_q − L_d, stands out: in its own standard deviations. */
    public double swingOverStandard() {
        double variance = ofBoth.at(0, 0) + ofBoth.at(1, 1) - 2 * ofBoth.at(0, 1);
        return variance > 0 ? (qHenry - dHenry) / Math.sqrt(variance) : Double.POSITIVE_INFINITY;
    }

    /** Residual standard deviation of the readings, H. */
    public double scatterHenry() {
        return Math.sqrt(Arrays.stream(residuals).map(r -> r * r).sum() / freedom);
    }
}
