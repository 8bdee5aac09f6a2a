package servowright.engine.thermal;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.NonlinearFit;
import servowright.engine.quantity.Require;

/**
 * What a winding's resistance was when its current was taken away, from readings while it cools.
 *
 * <p><b>Formula.</b> R(t) = R∞ + A exp(−t/τ), least squares, taken at t = 0; beside it the parabola through the same readings,
 * for comparison. <b>Valid for</b> four or more readings that fall, the first well
 * before τ: what happened before it is not seen. <b>Source.</b> Extrapolation to the moment of switching off as in IEC 60034-1,
 * temperature by resistance (recalled).
 *
 * @param startOhm      R∞ + A
 * @param standardOhm   standard deviation of it from the scatter of the readings
 * @param parabolaOhm   what the parabola gives
 * @param tauSecond     τ
 * @param freedom       degrees of freedom
 * @param restsOhm      read less fitted
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written to
public record CoolingCurve(
        double startOhm, double standardOhm, double parabolaOhm, double tauSecond, int freedom, double[] restsOhm) {
    private static final int FEWEST = 4;

    /**
     * Fits the readings; empty when there are fewer than four, or they do not fall towards a level.
     *
     * @param second times after switching off, not negative
     * @param ohm    readings
     */
    public static Optional<CoolingCurve> of(double[] second, double[] ohm) {
        for (double t : second) {
            Require.notNegative("time after switching off", t, "s");
        }
        int last = ohm.length - 1;
        if (ohm.length < FEWEST || !(mean(ohm, 0, ohm.length / 2) > mean(ohm, ohm.length / 2, ohm.length))) {
            return Optional.empty();
        }
        double span = Arrays.stream(second).max().orElse(0)
                - Arrays.stream(second).min().orElse(0);
        NonlinearFit fit = NonlinearFit.of(
                x -> curve(second, x), ohm, ohm[last], Math.max(1e-12, ohm[0] - ohm[last]), Math.log(span / 2));
        LinearFit parabola = LinearFit.of(Design.polynomial(second, 2), ohm);
        if (!fit.status().converged()) {
            return Optional.empty();
        }
        double start = fit.parameter(0) + fit.parameter(1);
        return Optional.of(new CoolingCurve(
                start,
                Math.sqrt(fit.covariance().varianceOf(1, 1, 0)),
                parabola.parameter(0),
                Math.exp(fit.parameter(2)),
                fit.degreesOfFreedom(),
                fit.residuals().toArray()));
    }

    private static double[] curve(double[] second, double[] x) {
        return Arrays.stream(second)
                .map(t -> x[0] + x[1] * Math.exp(-t / Math.exp(x[2])))
                .toArray();
    }

    private static double mean(double[] values, int from, int to) {
        return Arrays.stream(values, from, to).average().orElse(0);
    }
}
