package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.HarmonicError;
import servowright.engine.encoder.Ripple;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** What every fit of an angle error is reported with: figures, harmonics, curves, and the reason of a refusal. */
final class AngleFit {
    /** Friction that differs between the directions shifts their mean. */
    static final Phrase UNEVEN =
            Phrase.of("friction of both directions taken to agree within a fifth (common practice, no source)");

    private static final double UNEVEN_SHARE = 0.1;
    private static final int DRAWN = 361;
    private static final int MOST_DRAWN = 2000;

    private AngleFit() {}

    /** An offset that is the mean of both directions, with what unequal friction leaves in it. */
    static Known uneven(BenchTest test, Known offset, Known lag) {
        double half = UNEVEN_SHARE * Math.abs(lag.si());
        return offset.withPart(Source.of(test.id() + " friction of both directions"), half / Math.sqrt(3));
    }

    /** An angle with a standard error. */
    static Known angle(BenchTest test, double rad, double standardRad, String source) {
        return Known.of(
                new Quantity(rad, Dimension.ANGLE),
                standardRad,
                Source.of(test.id() + source),
                Origin.MEASURED,
                test.place().text());
    }

    /**
     * Standard error of the mean and of half the difference of the directions: √2 below that of an amplitude, for the mean square of a harmonic
     * over the turn is one half and that of a level is 1.
     */
    static double levelErrorRad(Calibration.Fitted fitted) {
        return fitted.amplitudeErrorRad() / Math.sqrt(2);
    }

    /** Largest distance of a series from its mean, sought over one turn. */
    static double peakRad(HarmonicError error) {
        HarmonicError ripple = new HarmonicError(0, error.ripples());
        return IntStream.range(0, DRAWN)
                .mapToDouble(i -> Math.abs(ripple.atRad(2 * Math.PI * i / DRAWN)))
                .max()
                .orElse(0);
    }

    /** The angle error with its harmonics. */
    static void error(ResultSheet sheet, BenchTest test, Calibration.Fitted fitted) {
        double scatter = fitted.amplitudeErrorRad()
                * Math.sqrt(Math.max(1, fitted.error().ripples().size()));
        Known peak = angle(test, peakRad(fitted.error()), scatter, " scatter of the harmonics");
        Working.Sheet working = Working.begin();
        working.note(
                "largest angle error over a turn, about its mean",
                "{ε}",
                "deg",
                "least squares of harmonics; those above three standard errors are kept",
                peak);
        sheet.value(AxisParameter.ANGLE_ERROR, new Candidate(peak, test.id(), working.end()));
        for (Ripple ripple : fitted.error().ripples()) {
            sheet.detail(Phrase.of("harmonic {k}: {A} at {phase}")
                    .with("k", ripple.order())
                    .with("A", angle(test, ripple.amplitudeRad(), fitted.amplitudeErrorRad(), " harmonics"), "deg")
                    .with(
                            "phase",
                            new Quantity(Math.atan2(ripple.cosineRad(), ripple.sineRad()), Dimension.ANGLE),
                            "deg"));
        }
        sheet.detail(Phrase.of("left over {sd}, Durbin-Watson {dw}, condition number {condition}")
                .with("sd", new Quantity(fitted.residualSdRad(), Dimension.ANGLE), "deg")
                .with("dw", fitted.whiteness().durbinWatson())
                .with("condition", fitted.conditionNumber()));
    }

    /** The error over one turn, as fitted and with what is left over. */
    static List<Curve> curves(Calibration.Fitted fitted, double[] shaftRad) {
        HarmonicError ripple = new HarmonicError(0, fitted.error().ripples());
        double[] turn = IntStream.range(0, DRAWN)
                .mapToDouble(i -> 2 * Math.PI * i / (DRAWN - 1))
                .toArray();
        double[] line = Arrays.stream(turn).map(ripple::atRad).toArray();
        int every = (shaftRad.length + MOST_DRAWN - 1) / MOST_DRAWN;
        int[] order = IntStream.range(0, shaftRad.length / every)
                .map(i -> i * every)
                .boxed()
                .sorted((a, b) -> Double.compare(turned(shaftRad[a]), turned(shaftRad[b])))
                .mapToInt(i -> i)
                .toArray();
        double[] at = Arrays.stream(order).mapToDouble(i -> turned(shaftRad[i])).toArray();
        double[] seen = Arrays.stream(order)
                .mapToDouble(
                        i -> ripple.atRad(shaftRad[i]) + fitted.residualRad().at(i))
                .toArray();
        double[] left = Arrays.stream(order)
                .mapToDouble(i -> fitted.residualRad().at(i))
                .toArray();
        return List.of(
                new Curve("angle error, measured", at, seen, "deg", "deg", Curve.Role.MEASURED),
                new Curve("angle error, fitted", turn, line, "deg", "deg", Curve.Role.FITTED),
                new Curve("left over", at, left, "deg", "deg", Curve.Role.RESIDUAL));
    }

    private static double turned(double rad) {
        double wrapped = Angles.wrapped(rad);
        return wrapped < 0 ? wrapped + 2 * Math.PI : wrapped;
    }

    /** Says why a fit was refused. */
    static void refused(ResultSheet sheet, Sought what, BenchTest test, Calibration.Refused why) {
        String figure = String.valueOf(Math.rint(100 * why.figure()) / 100);
        switch (why.reason()) {
            case TRAVEL_TOO_SMALL ->
                sheet.missing(
                        what,
                        "enough of a turn in " + test.id() + ": the condition number is " + figure + ", 10 at most",
                        "record a whole turn; where the joint cannot, state fewer orders");
            case TOO_FEW_SAMPLES ->
                sheet.missing(
                        what, "enough samples in " + test.id() + ": " + figure, "at least 64 for each electrical turn");
            case ONE_DIRECTION ->
                sheet.missing(
                        what,
                        "both directions in " + test.id() + ": friction hides in the offset",
                        "drag a whole turn forwards and the same back");
            case REVERSED -> sheet.missing(what, "the direction of the count in " + test.id(), "swap two phases");
            case DOES_NOT_FOLLOW ->
                sheet.missing(
                        what,
                        "a reading that follows in " + test.id() + ": " + figure + " turns read per turn made",
                        "check pole pairs and counts per turn; then look for a slipping magnet, and give more current");
            case JUMPS ->
                sheet.missing(
                        what,
                        "a reading without jumps in " + test.id() + ": " + figure + " turns at once",
                        "read the sensor faster, or turn slower");
        }
    }
}
