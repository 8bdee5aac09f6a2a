package servowright.engine.numeric;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The working of {@link HarmonicFit}: start, Gauss-Newton over the frequency, and the figures of the result. */
final class HarmonicSolver {
    private static final int MOST_PASSES = 60;

    /** A step that turns the phase at the ends of the record by less than this is the last one. */
    private static final double STILL = 1e-10;

    /** After a step that turns the phase by less, the normal equations are taken as they were. */
    private static final double CLOSE = 1e-3;

    private static final double STILL_IN_SIGMA = 1e-3;
    private static final double FALSE_ALARM = 0.01;

    private final HarmonicTerms terms;
    private final double[] samples;
    private final Abscissa abscissa;
    private final HarmonicPass pass;
    private double omega;
    private double[] figures;
    private int passes;

    private HarmonicSolver(HarmonicTerms terms, double[] samples, Abscissa abscissa) {
        this.terms = terms;
        this.samples = samples;
        this.abscissa = abscissa;
        this.pass = new HarmonicPass(terms, samples, abscissa);
        this.figures = new double[pass.linear()];
    }

    static HarmonicFit fit(HarmonicTerms terms, double[] samples, Abscissa abscissa) {
        Check.finite("samples", samples);
        HarmonicSolver solver = new HarmonicSolver(terms, samples, abscissa);
        if (samples.length <= solver.fitted()) {
            return solver.failed(FitStatus.TOO_FEW_OBSERVATIONS);
        }
        OptionalDouble start = terms.startFrequency().isPresent()
                ? terms.startFrequency()
                : HarmonicStart.frequency(terms, samples, abscissa);
        if (start.isEmpty() || abscissa.halfSpan() == 0) {
            return solver.failed(FitStatus.NOT_DETERMINED);
        }
        solver.omega = 2 * Math.PI * start.getAsDouble();
        return solver.run();
    }

    private int fitted() {
        return pass.linear() + (terms.frequencyKnown() ? 0 : 1);
    }

    private HarmonicFit run() {
        Optional<HarmonicPass.Step> last = Optional.empty();
        for (int round = 0; round < 2; round++) {
            passes++;
            last = pass.step(omega, figures, false);
            if (last.isEmpty()) {
                return failed(FitStatus.NOT_DETERMINED);
            }
            figures = moved(figures, last.get().change().inside(), 1);
            if (!terms.frequencyKnown()) {
                return search();
            }
        }
        return judged(last.get());
    }

    /** Joint steps of all figures, halved while they make the fit worse. */
    private HarmonicFit search() {
        double bestRss = Double.POSITIVE_INFINITY;
        double baseOmega = omega;
        double[] base = figures;
        double[] step = new double[figures.length + 1];
        double share = 1;
        double lastTurn = Double.POSITIVE_INFINITY;
        while (passes++ < MOST_PASSES) {
            GivenUp.check();
            Optional<HarmonicPass.Step> found =
                    lastTurn < CLOSE ? Optional.of(pass.again(omega, figures)) : pass.step(omega, figures, true);
            if (found.isEmpty()) {
                return failed(FitStatus.NOT_DETERMINED);
            }
            HarmonicPass.Step here = found.get();
            if (here.rss() > bestRss * (1 + 1e-9) && share > 1e-3) {
                share /= 4;
            } else {
                bestRss = here.rss();
                baseOmega = omega;
                base = figures;
                step = here.change().inside();
                double turn = Math.abs(step[step.length - 1]);
                double sigma = Math.sqrt(
                        here.rss() * here.inverse().at(step.length - 1, step.length - 1) / (samples.length - fitted()));
                share = Math.min(1, 1 / turn);
                lastTurn = turn;
                if (turn <= STILL || turn <= STILL_IN_SIGMA * sigma) {
                    advance(base, baseOmega, step, 1);
                    return judged(here);
                }
            }
            advance(base, baseOmega, step, share);
            if (!inRange()) {
                return failed(FitStatus.RAN_AWAY);
            }
        }
        return failed(FitStatus.ITERATION_LIMIT);
    }

    private void advance(double[] base, double baseOmega, double[] step, double share) {
        figures = moved(base, step, share);
        omega = baseOmega + share * step[step.length - 1] / abscissa.halfSpan();
    }

    private static double[] moved(double[] from, double[] change, double share) {
        double[] to = new double[from.length];
        for (int j = 0; j < to.length; j++) {
            to[j] = from[j] + share * change[j];
        }
        return to;
    }

    /** From one period over the record to half a cycle per sample. */
    private boolean inRange() {
        return omega * abscissa.halfSpan() >= Math.PI * (1 - 1e-3) && omega * abscissa.meanInterval() < Math.PI;
    }

    private HarmonicFit judged(HarmonicPass.Step step) {
        double[] residuals = pass.residuals(omega, figures);
        HarmonicFit fit =
                new HarmonicFigures(terms, abscissa, omega, figures, samples, residuals, step.inverse()).result(passes);
        if (terms.frequencyKnown() || standsOut(fit)) {
            return fit;
        }
        return failed(FitStatus.NOT_DETERMINED);
    }

    private boolean standsOut(HarmonicFit fit) {
        Harmonic strongest = fit.harmonics().get(0);
        for (Harmonic harmonic : fit.harmonics()) {
            strongest = harmonic.amplitude() > strongest.amplitude() ? harmonic : strongest;
        }
        double ratio = strongest.amplitude() / strongest.amplitudeStandardError();
        double lines = terms.startFrequency().isPresent() ? 1 : samples.length;
        return 0.5 * ratio * ratio > Math.log(lines / FALSE_ALARM);
    }

    private HarmonicFit failed(FitStatus status) {
        List<Harmonic> none = new ArrayList<>();
        for (int order : terms.orders()) {
            none.add(new Harmonic(order, Double.NaN, Double.NaN, Double.NaN, Double.NaN));
        }
        double[] unknown = new double[samples.length];
        Arrays.fill(unknown, Double.NaN);
        return new HarmonicFit(
                status,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                none,
                Optional.empty(),
                Covariance.unknown(HarmonicFigures.FIRST_SINE + 2 * none.size()),
                Values.owned(unknown),
                Double.NaN,
                samples.length - fitted(),
                Whiteness.unknown(samples.length),
                Double.NaN,
                passes);
    }
}
