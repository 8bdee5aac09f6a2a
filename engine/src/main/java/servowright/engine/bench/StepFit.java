package servowright.engine.bench;

import java.util.Arrays;
import java.util.OptionalDouble;
import servowright.engine.known.Outcome;
import servowright.engine.known.Working;
import servowright.engine.motor.WindingInductance;
import servowright.engine.numeric.NonlinearFit;
import servowright.engine.numeric.NonlinearModel;
import servowright.engine.numeric.Statistics;

/**
 * The exponential that a current follows after one step, and what the flux-linkage integral says beside it.
 *
 * @param startAmp     level before the step
 * @param finalAmp     level it settles at, from the fit
 * @param finalAmpError standard error
 * @param tauS         time constant from the fit
 * @param tauError     standard error
 * @param freedom      degrees of freedom of the fit
 * @param integralTauS time constant that the integral of the settling current gives
 * @param integralError standard error of it from the scatter
 * @param seconds      times of the fitted samples
 * @param amps         the fitted samples
 * @param residuals    sample less fit
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Channel
record StepFit(
        double startAmp,
        double finalAmp,
        double finalAmpError,
        double tauS,
        double tauError,
        double freedom,
        double integralTauS,
        double integralError,
        double[] seconds,
        double[] amps,
        double[] residuals) {
    private static final double SETTLED_TAUS = 4;
    private static final double FEWEST_PER_TAU = 3;
    private static final double CLEAR = 8;
    private static final double FITTED_TAUS = 12;

    /** Time from 50 % to 90 % over time from 10 % to 50 %: ln 5 / ln 1.8 = 2.74 for an exponential. */
    private static final double LEAST_BEND = 2.1;

    private static final double MOST_BEND = 3.6;
    private static final double FIRST = 0.1;

    /** Fits one stretch that begins with a step. */
    static Outcome<StepFit> of(Trace current, double levelBefore, int from, int to) {
        Trace part = current.part(from, to);
        double[] amps = part.values();
        double last =
                Statistics.median(Arrays.copyOfRange(amps, amps.length - Math.max(3, amps.length / 8), amps.length));
        double change = last - levelBefore;
        double noise = noise(amps);
        if (!(Math.abs(change) > CLEAR * noise) || change == 0) {
            return Outcome.missing(
                    "a clear step in " + current.channel(),
                    "use a larger voltage, or a more sensitive range, and record again");
        }
        double[] share =
                Arrays.stream(amps).map(a -> (a - levelBefore) / change).toArray();
        double t10 = crossing(part, share, FIRST);
        double t50 = crossing(part, share, 0.5);
        double t63 = crossing(part, share, -Math.expm1(-1));
        double t90 = crossing(part, share, 0.9);
        double tau = (t63 - t10) / (1 + Math.log(1 - FIRST));
        if (!(tau > FEWEST_PER_TAU * part.intervalS())) {
            return Outcome.missing(
                    "samples on the flank of " + current.channel(),
                    "record with at least 10 samples in the time constant");
        }
        if (part.spanS() < SETTLED_TAUS * tau) {
            return Outcome.missing(
                    "the settled current in " + current.channel(), "record on until the current stands still");
        }
        double bend = (t90 - t50) / (t50 - t10);
        if (!(bend > LEAST_BEND && bend < MOST_BEND)) {
            return Outcome.missing(
                    "an exponential in " + current.channel()
                            + ": its flank is bent, as by a limit, saturated iron or a rotor that moves",
                    "lock the rotor, use less current, and keep the signal within the range of the instrument");
        }
        return fitted(part, levelBefore, last, tau, t10);
    }

    private static Outcome<StepFit> fitted(Trace part, double before, double last, double tau, double start) {
        int from = index(part, start);
        int to = Math.max(index(part, start + FITTED_TAUS * tau), from + Trace.FEWEST / 2);
        Trace flank = part.part(from, Math.min(part.count(), to));
        double[] t =
                Arrays.stream(flank.seconds()).map(s -> s - flank.seconds()[0]).toArray();
        double b = flank.values()[0] - last;
        NonlinearFit fit =
                NonlinearFit.of(exponential(t), flank.values(), last, b, tau).allowingForDependence();
        if (!fit.status().converged() || !(fit.parameter(2) > 0)) {
            return Outcome.missing(
                    "an exponential in " + part.channel() + " (" + fit.status().reason() + ")",
                    "record one clean step with a settled current before and after");
        }
        double noise = fit.residualSd();
        double change = Math.abs(fit.parameter(0) - before);
        OptionalDouble integral = integral(t, flank.values(), fit);
        double meanError = fit.standardError(0) * t[t.length - 1] / change;
        double endError = noise / change * fit.parameter(2) * 1.5;
        double own = noise * part.intervalS() * Math.sqrt(t.length) / change;
        return Outcome.answer(
                new StepFit(
                        before,
                        fit.parameter(0),
                        fit.standardError(0),
                        fit.parameter(2),
                        fit.standardError(2),
                        fit.effectiveDegreesOfFreedom(),
                        integral.orElse(fit.parameter(2)),
                        Math.sqrt(meanError * meanError + endError * endError + own * own),
                        flank.seconds(),
                        flank.values(),
                        fit.residuals().toArray()),
                Working.NONE);
    }

    /** Time constant from the flux-linkage integral at loop resistance 1: the current turned upward, settled level known. */
    private static OptionalDouble integral(double[] t, double[] amps, NonlinearFit fit) {
        double settled = fit.parameter(0);
        double sign = Math.signum(-fit.parameter(1));
        double lift = Math.abs(settled) + Math.abs(fit.parameter(1));
        double[] rising =
                Arrays.stream(amps).map(a -> sign * (a - settled) + lift).toArray();
        double end = rising[rising.length - 1];
        if (!(end > rising[0])) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(WindingInductance.fromRise(t, rising, lift, 1).loopHenry());
    }

    private static NonlinearModel exponential(double[] t) {
        return NonlinearModel.withDerivatives(
                p -> Arrays.stream(t)
                        .map(s -> p[0] + p[1] * Math.exp(-s / p[2]))
                        .toArray(),
                p -> {
                    double[][] columns = new double[3][t.length];
                    for (int i = 0; i < t.length; i++) {
                        double e = Math.exp(-t[i] / p[2]);
                        columns[0][i] = 1;
                        columns[1][i] = e;
                        columns[2][i] = p[1] * e * t[i] / (p[2] * p[2]);
                    }
                    return columns;
                });
    }

    /** First time at which the smoothed share passes a level for good, between samples. */
    private static double crossing(Trace part, double[] share, double level) {
        for (int i = 1; i + 1 < share.length; i++) {
            double here = (share[i - 1] + share[i] + share[i + 1]) / 3;
            if (here >= level) {
                double before = i > 1 ? (share[i - 2] + share[i - 1] + share[i]) / 3 : share[0];
                double way = here > before ? (level - before) / (here - before) : 1;
                double step = part.seconds()[i] - part.seconds()[i - 1];
                return part.seconds()[i] - (1 - Math.min(1, Math.max(0, way))) * step - part.seconds()[0];
            }
        }
        return part.spanS();
    }

    private static int index(Trace part, double second) {
        int i = 0;
        while (i + 1 < part.count() && part.seconds()[i] - part.seconds()[0] < second) {
            i++;
        }
        return i;
    }

    /** Scatter of neighbours in the settled part. */
    private static double noise(double[] amps) {
        int from = amps.length / 2;
        double[] change = new double[amps.length - from - 1];
        for (int i = 0; i < change.length; i++) {
            change[i] = amps[from + i + 1] - amps[from + i];
        }
        return Statistics.rootMeanSquare(change) / Math.sqrt(2);
    }

    /** Change of the current. */
    double changeAmp() {
        return finalAmp - startAmp;
    }
}
