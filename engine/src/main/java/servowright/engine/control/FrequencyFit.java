package servowright.engine.control;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.numeric.NonlinearFit;
import servowright.engine.numeric.NonlinearModel;

/**
 * A first-order lag, with or without a delay, through ratios and phases at several frequencies.
 *
 * <p><b>Formula.</b> Least squares of ln ratio and phase on ln|K| − ½ ln(1 + (ωτ)²) and −ωT − atan(ωτ). All points count alike:
 * an actuator is never quite linear, and what it does differently from frequency to frequency, a share of its output, outweighs the noise of each;
 * the scatter beside the fit gives the uncertainty. <b>Valid for</b> phases that fall by less than half a turn from one frequency to the next.
 * <b>Source.</b> {@link DelayedLag}; the logarithm of a complex response, so that relative errors are absolute ones, derived.
 *
 * @param points  by rising frequency, with phases that do not jump
 * @param lag     what was found
 * @param delayed whether a delay was fitted; it is 0 otherwise
 * @param scatter standard deviation beside the fit, relative and in rad
 * @param fit     parameters ln|K|, τ and, if fitted, T
 */
public record FrequencyFit(List<SinePoint> points, DelayedLag lag, boolean delayed, double scatter, NonlinearFit fit) {
    public FrequencyFit {
        points = List.copyOf(points);
    }

    /** Fits sines of three or more frequencies; empty when they do not determine the lag. */
    public static Optional<FrequencyFit> of(List<SinePoint> sines, boolean delayed) {
        if (sines.size() < 3) {
            return Optional.empty();
        }
        List<SinePoint> points = unwound(sines);
        boolean reversed = Math.abs(points.get(0).phaseRad()) > Math.PI / 2;
        double turned = reversed ? Math.PI * Math.signum(points.get(0).phaseRad()) : 0;
        NonlinearFit fit = new Least(points, turned, delayed).fit();
        if (!fit.status().converged() || !(fit.parameter(1) > 0)) {
            return Optional.empty();
        }
        double gain = Math.exp(fit.parameter(0)) * (reversed ? -1 : 1);
        double delay = delayed ? Math.max(0, fit.parameter(2)) : 0;
        return Optional.of(new FrequencyFit(
                points, new DelayedLag(gain, fit.parameter(1), delay), delayed, fit.residualSd(), fit));
    }

    /** Standard uncertainty of K. */
    public double gainStandard() {
        return Math.abs(lag.gain()) * fit.standardError(0);
    }

    /** Standard uncertainty of τ, s. */
    public double tauStandard() {
        return fit.standardError(1);
    }

    /** Standard uncertainty of T, s; 0 when it was not fitted. */
    public double delayStandard() {
        return delayed ? fit.standardError(2) : 0;
    }

    private static List<SinePoint> unwound(List<SinePoint> sines) {
        List<SinePoint> sorted = new ArrayList<>(sines);
        sorted.sort(Comparator.comparingDouble(SinePoint::radPerS));
        for (int k = 1; k < sorted.size(); k++) {
            SinePoint p = sorted.get(k);
            double before = sorted.get(k - 1).phaseRad();
            double turns = Math.rint((p.phaseRad() - before) / (2 * Math.PI));
            double phase = p.phaseRad() - turns * 2 * Math.PI;
            sorted.set(k, new SinePoint(p.radPerS(), p.ratio(), p.ratioStandard(), phase, p.phaseStandard()));
        }
        return sorted;
    }

    private record Least(List<SinePoint> points, double turned, boolean delayed) {
        NonlinearFit fit() {
            int n = points.size();
            double[] observed = new double[2 * n];
            for (int k = 0; k < n; k++) {
                observed[k] = Math.log(points.get(k).ratio());
                observed[n + k] = points.get(k).phaseRad() - turned;
            }
            double[] start = {Math.log(points.get(0).ratio()), startTau(), 0};
            return NonlinearFit.of(
                    (NonlinearModel) this::predicted, observed, delayed ? start : new double[] {start[0], start[1]});
        }

        /** From the last frequency, where the ratio has fallen most; from the frequencies alone where it has not. */
        private double startTau() {
            SinePoint last = points.get(points.size() - 1);
            double fall = points.get(0).ratio() / last.ratio();
            double middle = Math.sqrt(points.get(0).radPerS() * last.radPerS());
            return fall > 1.05 ? Math.sqrt(fall * fall - 1) / last.radPerS() : 0.1 / middle;
        }

        private double[] predicted(double... p) {
            int n = points.size();
            double[] values = new double[2 * n];
            for (int k = 0; k < n; k++) {
                double w = points.get(k).radPerS();
                values[k] = p[0] - Math.log(Math.hypot(1, w * p[1]));
                values[n + k] = -Math.atan(w * p[1]) - (delayed ? w * p[2] : 0);
            }
            return values;
        }
    }
}
