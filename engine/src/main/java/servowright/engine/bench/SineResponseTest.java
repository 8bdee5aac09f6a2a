package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.control.SinePoint;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.numeric.FitStatus;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/** Sine response: a sine of one frequency goes in, and what comes out is held against it. One test is one frequency. */
final class SineResponseTest {
    private static final String SINES =
            "sines of one frequency through input and output, with offset and drift, least squares";

    /** An output whose sine is less than this many of its standard errors is none. */
    private static final double SEEN = 4;

    private static final double FEWEST_PERIODS = 1.2;
    private static final int MOST = 50_000;

    private final BenchTest test;
    private final ResultSheet sheet;
    private Optional<Found> found = Optional.empty();

    /**
     * What one sine gave.
     *
     * @param said     what the test says of input and output
     * @param gain     dimension of output over input
     * @param gainUnit unit to plot it in; empty where the units of both make none
     */
    record Found(SinePoint point, String said, Dimension gain, String gainUnit) {}

    private SineResponseTest(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
    }

    /** Reduces the recording. */
    static SineResponseTest of(BenchTest test, Optional<Recording> recording) {
        SineResponseTest reduction = new SineResponseTest(test);
        recording.ifPresentOrElse(
                reduction::reduce,
                () -> reduction.sheet.missing(
                        ResponseParameter.RATIO, "a recording of " + test.id(), ResponseParameter.RATIO.settle()));
        return reduction;
    }

    BenchTest test() {
        return test;
    }

    Optional<Found> found() {
        return found;
    }

    /** Where results that rest on several sines are added. */
    ResultSheet sheet() {
        return sheet;
    }

    private void reduce(Recording recording) {
        Outcome<InAndOut> read = InAndOut.of(test, recording);
        if (read instanceof Missing<InAndOut> why) {
            sheet.missing(ResponseParameter.RATIO, why);
            return;
        }
        InAndOut both = read.found().orElseThrow();
        sheet.remarks(both.remarks());
        fit(both, both.in().thinned(MOST), both.out().thinned(MOST));
    }

    private void fit(InAndOut both, Trace in, Trace out) {
        double hertz = hertz(in);
        double periods = hertz * in.spanS();
        if (!(periods >= FEWEST_PERIODS)) {
            sheet.missing(
                    ResponseParameter.RATIO,
                    "a sine of one frequency in the input of " + test.id(),
                    "drive it with a sine, record two periods or more, or state its frequency");
            return;
        }
        HarmonicTerms known = HarmonicTerms.ofOrders(1).withDrift().atKnownFrequency(hertz);
        HarmonicFit put = in.fit(known);
        HarmonicFit got = out.fit(known);
        Harmonic u = put.harmonic(1);
        Harmonic y = got.harmonic(1);
        if (put.status() != FitStatus.CONVERGED || !(u.amplitude() > SEEN * u.amplitudeStandardError())) {
            sheet.missing(
                    ResponseParameter.RATIO,
                    "a sine of the stated frequency in the input of " + test.id(),
                    "check frequency, or which channel is the input");
            return;
        }
        if (got.status() != FitStatus.CONVERGED || !(y.amplitude() > SEEN * y.amplitudeStandardError())) {
            sheet.missing(
                    ResponseParameter.RATIO,
                    "an output that follows the sine of the input in " + test.id(),
                    "record the output that belongs to it, with more amplitude or over more periods");
            return;
        }
        describe(hertz, put, got, both);
        sheet.curves(PointCurves.of(
                "output", "sine", out.seconds(), out.values(), got.residuals().toArray(), "s", both.outUnit()));
        values(point(2 * Math.PI * hertz, u, y), got, both);
    }

    /** As stated, or as the input shows it; 0 where it shows none. */
    private double hertz(Trace in) {
        Optional<Known> stated = test.figures().known(TestFigure.FREQUENCY);
        if (stated.isPresent()) {
            return stated.get().si();
        }
        HarmonicFit search = in.fit(HarmonicTerms.ofOrders(1).withDrift());
        return search.status() == FitStatus.CONVERGED ? search.frequency() : 0;
    }

    private void describe(double hertz, HarmonicFit put, HarmonicFit got, InAndOut both) {
        sheet.detail(Phrase.of("{periods} periods of {f}; input {u} and output {y}, {ru} and {ry} rms left over")
                .with("periods", hertz * both.in().spanS())
                .with("f", Quantity.of(hertz, "Hz"), "Hz")
                .with("u", both.input(put.harmonic(1).amplitude()), both.inUnit())
                .with("y", both.output(got.harmonic(1).amplitude()), both.outUnit())
                .with("ru", both.input(put.residualSd()), both.inUnit())
                .with("ry", both.output(got.residualSd()), both.outUnit()));
    }

    private static SinePoint point(double radPerS, Harmonic u, Harmonic y) {
        double phase = Math.IEEEremainder(y.phase() - u.phase(), 2 * Math.PI);
        double ratio =
                Math.hypot(y.amplitudeStandardError() / y.amplitude(), u.amplitudeStandardError() / u.amplitude());
        return new SinePoint(
                radPerS,
                y.amplitude() / u.amplitude(),
                Math.max(ratio, 1e-9),
                phase,
                Math.max(Math.hypot(y.phaseStandardError(), u.phaseStandardError()), 1e-9));
    }

    private void values(SinePoint point, HarmonicFit got, InAndOut both) {
        double freedom = got.effectiveDegreesOfFreedom();
        Quantity ratio = new Quantity(point.ratio(), both.gain());
        sheet.value(
                ResponseParameter.RATIO,
                InAndOut.candidate(
                        test,
                        ResponseParameter.RATIO,
                        ratio,
                        point.ratio() * point.ratioStandard(),
                        freedom,
                        "amplitude of the output over that of the input",
                        SINES));
        sheet.value(
                ResponseParameter.PHASE,
                InAndOut.candidate(
                        test,
                        ResponseParameter.PHASE,
                        Quantity.of(point.phaseRad(), "rad"),
                        point.phaseStandard(),
                        freedom,
                        "phase of the output against the input",
                        SINES));
        found = Optional.of(new Found(point, both.said(), both.gain(), both.gainUnit()));
    }
}
