package servowright.engine.control;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.GramFit;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Require;

/**
 * A first-order lag with a delay fitted to a whole recording, whatever excited it: steps, random steps, sweeps, all at once.
 *
 * <p><b>Formula.</b> Least squares of the output on {@link LagRun}, with gain, time constant, delay, start and offset; the errors are those
 * of the output (output-error form), so that noise of the output does not bias. The search starts from the best of a grid of τ and T, for each of which the rest is
 * linear. Scatter alone: as if samples were independent. The covariance that counts leaves out one sixteenth of the recording after the other,
 * on the tangent of the model, with the start held: it sees residuals that depend on each other and figures that differ from excitation to
 * excitation. <b>Valid for</b> an input without noise, held from sample to sample. <b>Source.</b> L. Ljung, "System
 * Identification", 2nd ed. 1999, chapter 4.3 and 10 (recalled).
 *
 * @param lag       what was found
 * @param start     what dies away from the first sample on, unit of the output
 * @param offset    of the output
 * @param residuals of the output
 * @param tangent   of the model there, with the covariance by scatter alone: gain, τ, start, offset and, if above 0, T
 * @param stretches the same without the start, with the covariance that counts: gain, τ, offset and, if above 0, T
 * @param run       of the lag found
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: the fit of one recording
public record LagFit(
        DelayedLag lag,
        double start,
        double offset,
        double[] residuals,
        LinearFit tangent,
        BlockJackknife stretches,
        LagRun run) {
    private static final int STRETCHES = 16;
    private static final int MOST_STEPS = 100;
    private static final double LEAST_SHARE = 1e-3;
    private static final double STILL = 1e-10;
    private static final int TAUS = 14;
    private static final double[] DELAYS = {0, 0.03, 0.1, 0.2, 0.5, 1};

    /** Fits rising times; empty when input and output do not determine the lag. */
    public static Optional<LagFit> of(double[] seconds, double[] input, double[] output) {
        Require.atLeast("samples", 4 * STRETCHES, seconds.length);
        Search search = new Search(seconds, input, output);
        return search.start().flatMap(search::descended).flatMap(search::judged);
    }

    /** Whether a delay was found. */
    public boolean delayed() {
        return lag.delaySecond() > 0;
    }

    /** Standard error of gain, 0, τ, 1, or T, 4, by scatter alone. */
    public double scatterAlone(int parameter) {
        return tangent.standardError(parameter);
    }

    /** Share of the output's spread about its mean that the fit explains, 1 − ‖residuals‖ / ‖output − mean‖. */
    public double explained(double[] output) {
        double left = Statistics.rootMeanSquare(residuals);
        double mean = Statistics.mean(output);
        return 1
                - left
                        / Statistics.rootMeanSquare(
                                Arrays.stream(output).map(y -> y - mean).toArray());
    }

    /**
     * Gains for small and for large outputs, below and above half of the largest, τ, T and start being held; empty where there are not both.
     *
     * @return fit with parameters small gain, large gain and offset
     */
    public Optional<BlockJackknife> byLevel(double[] output) {
        double[] f = run.forced();
        double middle = Arrays.stream(f).map(Math::abs).max().orElse(0) / 2;
        double[] small =
                Arrays.stream(f).map(v -> Math.abs(v) <= middle ? v : 0).toArray();
        double[] large = Arrays.stream(f).map(v -> Math.abs(v) > middle ? v : 0).toArray();
        double[] ones = new double[f.length];
        Arrays.fill(ones, 1);
        double[] rest = new double[f.length];
        for (int k = 0; k < rest.length; k++) {
            rest[k] = output[k] - start * run.natural()[k];
        }
        return BlockJackknife.of(Design.ofColumns(small, large, ones), rest, STRETCHES);
    }

    private record Search(double[] seconds, double[] input, double[] output) {
        /** Best of the grid: gain, τ, start, offset, T. */
        Optional<double[]> start() {
            double span = seconds[seconds.length - 1] - seconds[0];
            double least = span / (seconds.length - 1);
            double best = Double.POSITIVE_INFINITY;
            double[] found = null;
            double[] ones = ones();
            for (int k = 0; k < TAUS; k++) {
                double tau = least * Math.pow(0.5 * span / least, (k + 0.5) / TAUS);
                for (double share : DELAYS) {
                    LagRun run = LagRun.of(seconds, input, tau, share * tau);
                    Optional<GramFit> fit = GramFit.of(output, run.forced(), run.natural(), ones);
                    if (fit.isPresent() && fit.get().residualSumOfSquares() < best) {
                        best = fit.get().residualSumOfSquares();
                        double[] p = fit.get().parameters();
                        found = new double[] {p[0], tau, p[1], p[2], Math.max(share, 0.01) * tau};
                    }
                }
            }
            return Optional.ofNullable(found);
        }

        private double[] ones() {
            double[] ones = new double[seconds.length];
            Arrays.fill(ones, 1);
            return ones;
        }

        /** Gauss-Newton, each step halved until it helps: the model has kinks in T, where smoother searches give up. */
        Optional<double[]> descended(double... start) {
            double[] p = start;
            double squares = squares(p);
            for (int step = 0; step < MOST_STEPS; step++) {
                LinearFit tangent = LinearFit.of(Design.ofColumns(derivatives(p)), residuals(p));
                if (!tangent.status().converged()) {
                    return Optional.empty();
                }
                double[] next = p;
                double least = squares;
                for (double share = 1; share > LEAST_SHARE && least >= squares; share /= 2) {
                    next = moved(p, tangent, share);
                    least = outside(next) ? Double.POSITIVE_INFINITY : squares(next);
                }
                if (!(least < squares * (1 - STILL))) {
                    return Optional.of(p);
                }
                p = next;
                squares = least;
            }
            return Optional.empty();
        }

        private static double[] moved(double[] p, LinearFit tangent, double share) {
            double[] next = p.clone();
            for (int j = 0; j < next.length; j++) {
                next[j] += share * tangent.parameter(j);
            }
            next[4] = Math.max(0, next[4]);
            return next;
        }

        private double squares(double... p) {
            return Arrays.stream(residuals(p)).map(r -> r * r).sum();
        }

        private double[] residuals(double... p) {
            LagRun run = run(p);
            double[] rest = new double[seconds.length];
            for (int k = 0; k < rest.length; k++) {
                rest[k] = output[k] - p[0] * run.forced()[k] - p[2] * run.natural()[k] - p[3];
            }
            return rest;
        }

        private boolean outside(double... p) {
            double span = seconds[seconds.length - 1] - seconds[0];
            return !(p[1] > 0 && p[1] < 10 * span && p[4] < span);
        }

        private LagRun run(double... p) {
            return LagRun.of(seconds, input, p[1], p[4]);
        }

        private double[][] derivatives(double... p) {
            LagRun run = run(p);
            double[] byTau = new double[seconds.length];
            double[] byDelay = new double[seconds.length];
            for (int k = 0; k < byTau.length; k++) {
                byTau[k] = p[0] * run.byTau()[k] + p[2] * run.naturalByTau()[k];
                byDelay[k] = p[0] * run.byDelay()[k];
            }
            return new double[][] {run.forced(), byTau, run.natural(), ones(), byDelay};
        }

        Optional<LagFit> judged(double... p) {
            double[][] d = derivatives(p);
            double[] rest = residuals(p);
            boolean delayed = p[4] > 0;
            LinearFit tangent = LinearFit.of(Design.ofColumns(delayed ? d : Arrays.copyOf(d, 4)), rest);
            Design held = delayed ? Design.ofColumns(d[0], d[1], d[3], d[4]) : Design.ofColumns(d[0], d[1], d[3]);
            DelayedLag lag = new DelayedLag(p[0], p[1], p[4]);
            return BlockJackknife.of(held, rest, STRETCHES)
                    .map(stretches -> new LagFit(lag, p[2], p[3], rest, tangent, stretches, run(p)));
        }
    }
}
