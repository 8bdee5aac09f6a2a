package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.control.LagFit;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.machine.BenchTest;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/**
 * Response run: whatever went in, steps, random steps, sweeps, is recorded with what came out, and a first-order lag with a delay is
 * fitted to all of it at once.
 */
final class ResponseRunTest {
    private static final String MODEL = "first-order lag with delay, all of the recording at once, least squares";
    private static final int FEWEST = 128;
    private static final int MOST = 20_000;
    private static final double LEAST_EXPLAINED = 0.5;
    private static final double SEEN = 2;
    private static final double APART = 3;

    private final BenchTest test;
    private final ResultSheet sheet;

    private ResponseRunTest(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
    }

    /** Reduces the recording. */
    static TestResult of(BenchTest test, Optional<Recording> recording) {
        return new ResponseRunTest(test).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        if (recording.isEmpty()) {
            return refused("a recording of " + test.id(), ResponseParameter.GAIN.settle());
        }
        Outcome<InAndOut> read = InAndOut.of(test, recording.get());
        if (read instanceof Missing<InAndOut> why) {
            sheet.missing(ResponseParameter.GAIN, why);
            return sheet.end();
        }
        InAndOut both = read.found().orElseThrow();
        sheet.remarks(both.remarks());
        DrivenRun.stamps(both.in()).ifPresent(sheet::remark);
        Trace in = both.in().thinned(MOST);
        Trace out = both.out().thinned(MOST);
        if (in.count() < FEWEST) {
            return refused(FEWEST + " samples or more in " + test.id(), "record longer, or faster");
        }
        Optional<LagFit> fit = LagFit.of(in.seconds(), in.values(), out.values());
        if (fit.isEmpty() || !follows(fit.get(), in, out)) {
            return refused(
                    "an output that follows the input like a lag in " + test.id(),
                    "record several steps or a sweep, over ten time constants or more, with samples a tenth of one apart");
        }
        describe(fit.get(), out);
        level(fit.get(), out);
        values(fit.get(), both.gain());
        sheet.curves(PointCurves.of(
                "output",
                "first-order lag",
                out.seconds(),
                out.values(),
                fit.get().residuals(),
                "s",
                both.outUnit()));
        return sheet.end();
    }

    private TestResult refused(String need, String settle) {
        return sheet.refused(ResponseParameter.GAIN, need, settle);
    }

    private static boolean follows(LagFit fit, Trace in, Trace out) {
        double tau = fit.lag().tauSecond();
        return fit.explained(out.values()) > LEAST_EXPLAINED
                && Math.abs(fit.lag().gain()) > SEEN * fit.stretches().standardError(0)
                && tau > SEEN * fit.stretches().standardError(1)
                && tau > in.intervalS()
                && tau < in.spanS() / 3;
    }

    private void describe(LagFit fit, Trace out) {
        sheet.detail(Phrase.of(
                        "explains {share} of the output; scatter alone, as if samples did not depend on each other: gain {K}, time constant {tau}, delay"
                                + " {T}; offset {c}")
                .with("share", Quantity.number(fit.explained(out.values())), "%")
                .with("K", alone(Quantity.number(fit.lag().gain()), fit.scatterAlone(0)))
                .with("tau", alone(Quantity.of(fit.lag().tauSecond(), "s"), fit.scatterAlone(1)), "ms")
                .with(
                        "T",
                        alone(Quantity.of(fit.lag().delaySecond(), "s"), fit.delayed() ? fit.scatterAlone(4) : 0),
                        "ms")
                .with("c", fit.offset()));
        sheet.detail(Phrase.of(
                "uncertainties of the results come from stretches left out in turn: they see what differs from one"
                        + " excitation to the next"));
    }

    private Known alone(Quantity value, double standard) {
        return Known.of(value, standard, Source.of(test.id() + " scatter alone"), Origin.MEASURED, test.id());
    }

    private void level(LagFit fit, Trace out) {
        Optional<BlockJackknife> levels = fit.byLevel(out.values());
        levels.ifPresent(l -> {
            double small = l.parameter(0);
            double large = l.parameter(1);
            double u = Math.sqrt(l.covariance().varianceOf(1, -1, 0));
            sheet.detail(Phrase.of("gain where the output is small {small}, where it is large {large}")
                    .with("small", alone(Quantity.number(small), l.standardError(0)))
                    .with("large", alone(Quantity.number(large), l.standardError(1))));
            if (Math.abs(small - large) > APART * u) {
                sheet.remark(
                        "the gain depends on how large the output is: a dead zone, dry friction or a limit; one step alone would give"
                                + " another gain");
            }
        });
    }

    private void values(LagFit fit, Dimension gain) {
        if (fit.lag().gain() < 0) {
            sheet.remark("the output falls when the input rises: the gain is negative");
        }
        put(ResponseParameter.GAIN, new Quantity(fit.lag().gain(), gain), fit, 0, fit.scatterAlone(0));
        put(ResponseParameter.TIME_CONSTANT, Quantity.of(fit.lag().tauSecond(), "s"), fit, 1, fit.scatterAlone(1));
        if (fit.delayed()) {
            put(ResponseParameter.DELAY, Quantity.of(fit.lag().delaySecond(), "s"), fit, 3, fit.scatterAlone(4));
        } else {
            sheet.missing(
                    ResponseParameter.DELAY,
                    "a delay that stands out in " + test.id(),
                    "record steps with samples much closer together than the delay");
        }
    }

    /** With the scatter and, apart from it, what the figure differs by from one stretch of excitation to the next. */
    private void put(ResponseParameter what, Quantity value, LagFit fit, int column, double alone) {
        BlockJackknife stretches = fit.stretches();
        double all = stretches.standardError(column);
        Known known = alone(value, Math.min(alone, all))
                .withPart(
                        Source.of(test.id() + " differences between excitations", stretches.degreesOfFreedom()),
                        Math.sqrt(Math.max(0, all * all - alone * alone)));
        sheet.value(what, InAndOut.candidate(test, what, known, what.words(), MODEL));
    }
}
