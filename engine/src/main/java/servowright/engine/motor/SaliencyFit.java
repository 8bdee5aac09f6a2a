package servowright.engine.motor;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
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
 * @param dStandardHenry    standard deviation of the first
 * @param qStandardHenry    standard deviation of the second
 * @param leastElectricalRad electrical angle at which the reading is least, from 0 to below π
 * @param scatterHenry      residual standard deviation of the readings
 */
public record SaliencyFit(
        double dHenry,
        double qHenry,
        double dStandardHenry,
        double qStandardHenry,
        double leastElectricalRad,
        double scatterHenry) {

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
        if (!fit.status().converged()) {
            return Optional.empty();
        }
        double mean = fit.parameter(0);
        double cosine = fit.parameter(1);
        double sine = fit.parameter(2);
        double swing = Math.hypot(cosine, sine);
        if (!(mean > swing && swing > 0)) {
            return Optional.empty();
        }
        double[] onD = {0.5, -cosine / (2 * swing), -sine / (2 * swing)};
        double[] onQ = {0.5, cosine / (2 * swing), sine / (2 * swing)};
        return Optional.of(new SaliencyFit(
                (mean - swing) / 2,
                (mean + swing) / 2,
                Math.sqrt(fit.covariance().varianceOf(onD)),
                Math.sqrt(fit.covariance().varianceOf(onQ)),
                Saliency.axisAngle(-sine, -cosine),
                fit.residualSd()));
    }
}
