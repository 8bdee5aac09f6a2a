package servowright.engine.bench;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.capture.SignalTrace;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Source;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Quantity;

/**
 * Whether two signals of one axis are scaled alike: a speed against the rate at which a position changes.
 *
 * <p><b>Formula.</b> The ratio is 1 / b of the straight line x = a + b ∫ v dt through positions x and the sum of the speed by the
 * trapezoid rule: the sum is smoother than a derivative of counts would be. A position that runs over is unwound first. <b>Valid
 * for</b> a machine that moves in the capture; without motion there is no ratio. Its uncertainty allows for residuals that depend on
 * each other. <b>Source.</b> straight line by least squares; the check: common practice, no source.
 *
 * @param ratio speed that is shown against the rate of the position
 */
public record SignalScale(String position, String speed, Known ratio) {
    private static final int ENOUGH = 20;
    private static final double LEAST_MOTION = 20;

    /** The ratio; nothing when too little came or moved. */
    public static Optional<SignalScale> of(SignalTrace position, SignalTrace speed) {
        double[] t = position.atS();
        double[] x = unwound(position);
        double[] sum = summed(speed, t, (position.startNs() - speed.startNs()) * 1e-9);
        double moved = t.length < ENOUGH ? 0 : spread(x);
        if (sum.length < ENOUGH
                || moved < LEAST_MOTION * Math.abs(position.signal().scale())
                || spread(sum) == 0) {
            return Optional.empty();
        }
        LinearFit fit = LinearFit.of(Design.line(sum), x).allowingForDependence();
        double slope = fit.parameter(1);
        if (slope == 0) {
            return Optional.empty();
        }
        String from = speed.signal().name() + " against " + position.signal().name();
        Known ratio = Known.of(
                Quantity.number(1 / slope),
                fit.standardError(1) / (slope * slope),
                Source.of(from, Math.max(1, fit.effectiveDegreesOfFreedom())),
                Origin.MEASURED,
                from);
        return Optional.of(
                new SignalScale(position.signal().name(), speed.signal().name(), ratio));
    }

    private static double spread(double[] values) {
        return Arrays.stream(values).max().orElse(0)
                - Arrays.stream(values).min().orElse(0);
    }

    private static double[] unwound(SignalTrace position) {
        double[] x = position.values();
        double span = position.signal().span();
        double turns = 0;
        double last = x.length == 0 ? 0 : x[0];
        for (int k = 1; k < x.length; k++) {
            double step = x[k] - last;
            last = x[k];
            turns += step > span / 2 ? -span : step < -span / 2 ? span : 0;
            x[k] += turns;
        }
        return x;
    }

    /** The sum of the speed up to each of the times, by the trapezoid rule. */
    private static double[] summed(SignalTrace speed, double[] times, double laterS) {
        double[] t = speed.atS();
        double[] v = speed.values();
        if (t.length < 2) {
            return new double[0];
        }
        double[] all = new double[times.length];
        double sum = 0;
        int k = 0;
        for (int i = 0; i < times.length; i++) {
            double at = times[i] + laterS;
            while (k < t.length - 2 && t[k + 1] <= at) {
                sum += (t[k + 1] - t[k]) * (v[k] + v[k + 1]) / 2;
                k++;
            }
            double into = Math.max(0, Math.min(at, t[k + 1]) - t[k]);
            double here = v[k] + (v[k + 1] - v[k]) * into / Math.max(1e-12, t[k + 1] - t[k]);
            all[i] = sum + into * (v[k] + here) / 2;
        }
        return all;
    }
}
