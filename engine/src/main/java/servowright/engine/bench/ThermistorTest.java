package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.numeric.SlidingRange;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;
import servowright.engine.thermal.Thermistor;
import servowright.engine.thermal.ThermistorFit;

/** Thermistor check: a thermistor read beside a thermometer that is trusted gives its constants, and judges those that were declared. */
final class ThermistorTest {
    private static final String CURVE = "exponential through settled readings, least squares";

    /** A reading counts as settled when the thermometer stays within this share of its whole range, or one step, around it. */
    private static final double SETTLED = 0.02;

    private static final int NEIGHBOURHOODS = 100;
    private static final int FEWEST = 12;
    private static final int FEWEST_BY_HAND = 4;
    private static final double LEAST_RANGE_KELVIN = 5;
    private static final double SEEN = 4;

    private final BenchTest test;
    private final Motor motor;
    private final ResultSheet sheet;

    private ThermistorTest(BenchTest test, Motor motor) {
        this.test = test;
        this.motor = motor;
        this.sheet = new ResultSheet(test);
    }

    /** Reduces the calibration; constants that the test does not state are those of the motor. */
    static TestResult of(BenchTest test, Motor motor, Optional<Recording> recording) {
        return new ThermistorTest(test, motor).reduced(recording);
    }

    private TestResult refused(String need, String settle) {
        return sheet.refused(ThermistorParameter.BETA, need, settle);
    }

    private TestResult reduced(Optional<Recording> recording) {
        if (recording.isEmpty()) {
            return byHand();
        }
        Outcome<Trace> reference = trace(recording.get(), "temperature", Dimension.TEMPERATURE);
        Outcome<Trace> resistance = resistance(recording.get());
        Optional<Missing<?>> why = reference instanceof Missing<Trace> a
                ? Optional.of(a)
                : resistance instanceof Missing<Trace> b ? Optional.of(b) : Optional.empty();
        if (why.isPresent()) {
            sheet.missing(ThermistorParameter.BETA, why.get());
            return sheet.end();
        }
        Trace kelvin = reference.found().orElseThrow();
        Trace ohm = resistance.found().orElseThrow();
        sheet.remarks(kelvin.remarks());
        if (kelvin.count() != ohm.count()) {
            return refused(
                    "thermometer and thermistor of " + test.id() + " at the same times", "record both without gaps");
        }
        int[] settled = settled(kelvin);
        double[] t = DrivenRun.picked(kelvin.values(), settled);
        double[] r = DrivenRun.picked(ohm.values(), settled);
        if (t.length < FEWEST || range(t) < LEAST_RANGE_KELVIN) {
            return refused(
                    "settled temperatures over " + (int) LEAST_RANGE_KELVIN + " K or more in " + test.id(),
                    ThermistorParameter.BETA.settle());
        }
        return fitted(t, r, kelvin.count());
    }

    /** Readings of thermometer and ohmmeter, each settled. */
    private TestResult byHand() {
        List<Figures<ReadingFigure>> both = test.readings().stream()
                .map(Reading::figures)
                .filter(f -> f.get(ReadingFigure.TEMPERATURE).isPresent()
                        && f.get(ReadingFigure.RESISTANCE).isPresent())
                .toList();
        double[] t = si(both, ReadingFigure.TEMPERATURE);
        double[] r = si(both, ReadingFigure.RESISTANCE);
        return t.length < FEWEST_BY_HAND || range(t) < LEAST_RANGE_KELVIN
                ? refused(
                        "a recording of " + test.id() + ", or four readings of temperature and resistance",
                        ThermistorParameter.BETA.settle())
                : fitted(t, r, t.length);
    }

    private static double[] si(List<Figures<ReadingFigure>> readings, ReadingFigure figure) {
        return readings.stream()
                .mapToDouble(f -> f.get(figure).orElseThrow().si())
                .toArray();
    }

    private TestResult fitted(double[] t, double[] r, int all) {
        Optional<ThermistorFit> fit = ThermistorFit.of(t, r);
        if (fit.isEmpty() || !(fit.get().betaKelvin() > SEEN * fit.get().fit().standardError(1))) {
            return refused(
                    "a resistance that falls with the temperature in " + test.id(),
                    "check which channel is which, and how the divider is wired: the thermistor towards zero");
        }
        sheet.detail(Phrase.of("{n} of {all} readings are settled, from {from} to {to}")
                .with("n", t.length)
                .with("all", all)
                .with("from", kelvins(Arrays.stream(t).min().orElseThrow()), "degC")
                .with("to", kelvins(Arrays.stream(t).max().orElseThrow()), "degC"));
        values(fit.get());
        declared().ifPresent(d -> judge(d, fit.get()));
        curves(fit.get());
        return sheet.end();
    }

    private void curves(ThermistorFit fit) {
        double[] ohm = Arrays.stream(fit.ln()).map(Math::exp).toArray();
        sheet.curves(PointCurves.smooth(
                "thermistor",
                "exponential",
                fit.kelvin(),
                ohm,
                k -> fit.curve().ohm(k).orElse(Double.NaN),
                "degC",
                "kohm"));
    }

    private static double range(double... t) {
        return Arrays.stream(t).max().orElse(0) - Arrays.stream(t).min().orElse(0);
    }

    private static Quantity kelvins(double kelvin) {
        return new Quantity(kelvin, Dimension.TEMPERATURE);
    }

    private Outcome<Trace> trace(Recording recording, String word, Dimension dimension) {
        for (Channel channel : recording.channels()) {
            boolean right =
                    channel.unit().map(Unit::dimension).orElse(Dimension.NUMBER).equals(dimension);
            if (right && test.channels().getOrDefault(channel.name(), "").contains(word)) {
                Outcome<Trace> trace = Trace.of(test, recording, channel);
                boolean cut = trace.found().flatMap(Trace::saturation).isPresent();
                return cut
                        ? Outcome.missing(
                                "a " + word + " in " + recording.name() + " that does not run into its limit: "
                                        + channel.name() + " is cut off",
                                "choose a larger range and record again")
                        : trace;
            }
        }
        return Outcome.missing(
                "a " + word + " in " + recording.name(),
                "state channels: {..: temperature, ..: resistance}, with their units; or divider, with the fixed resistor"
                        + " under divider");
    }

    /** The resistance as recorded, or from a divider of a stated resistor. */
    private Outcome<Trace> resistance(Recording recording) {
        Optional<Known> fixed = test.figures().known(TestFigure.DIVIDER);
        if (fixed.isEmpty()) {
            return trace(recording, "resistance", Dimension.RESISTANCE);
        }
        Outcome<Trace> share = trace(recording, "divider", Dimension.NUMBER);
        boolean within = share.found()
                .map(s -> Arrays.stream(s.values()).allMatch(q -> q > 0 && q < 1))
                .orElse(true);
        if (!within) {
            return Outcome.missing(
                    "shares between 0 and 1 of the divider in " + recording.name(),
                    "state under scale what one count is worth, 1/1023 for example");
        }
        return share.found()
                .<Outcome<Trace>>map(s -> Outcome.answer(
                        s.with(Arrays.stream(s.values())
                                .map(q -> Thermistor.ohmInDivider(q, fixed.get().si()))
                                .toArray()),
                        Working.NONE))
                .orElse(share);
    }

    /** Samples about which the thermometer stands still. */
    private static int[] settled(Trace kelvin) {
        double[] t = kelvin.values();
        int reach = Math.max(1, t.length / (2 * NEIGHBOURHOODS));
        double allowed = Math.max(SETTLED * range(t), 1e-9);
        double[] around = SlidingRange.of(t, reach);
        return IntStream.range(0, around.length)
                .filter(i -> around[i] <= allowed)
                .map(i -> i + reach)
                .toArray();
    }

    private void values(ThermistorFit fit) {
        put(
                ThermistorParameter.RESISTANCE_AT_25,
                Quantity.of(fit.ohmAt25(), "ohm"),
                fit.ohmAt25() * fit.fit().standardError(0),
                fit);
        put(ThermistorParameter.BETA, kelvins(fit.betaKelvin()), fit.fit().standardError(1), fit);
    }

    private void put(ThermistorParameter what, Quantity value, double standard, ThermistorFit fit) {
        Known known = Known.of(
                value,
                standard,
                Source.of(test.id() + " " + what.symbol(), fit.fit().degreesOfFreedom()),
                Origin.MEASURED,
                test.id());
        Working.Sheet working = Working.begin();
        working.note(what.words(), "{" + what.symbol() + "}", what.unit(), CURVE, known);
        sheet.value(what, new Candidate(known, test.id(), working.end()));
    }

    /** Constants stated with the test, else with the motor. */
    private Optional<Thermistor> declared() {
        return exponential(
                        test.figures().known(TestFigure.RESISTANCE_AT_25),
                        test.figures().known(TestFigure.BETA))
                .or(this::threeConstants)
                .or(() -> exponential(
                        motor.figures().known(MotorFigure.THERMISTOR_RESISTANCE),
                        motor.figures().known(MotorFigure.THERMISTOR_BETA)));
    }

    private static Optional<Thermistor> exponential(Optional<Known> at25, Optional<Known> beta) {
        return at25.flatMap(r -> beta.map(b -> Thermistor.exponential(r.si(), b.si())));
    }

    private Optional<Thermistor> threeConstants() {
        Optional<Known> a = test.figures().known(TestFigure.THERMISTOR_A);
        Optional<Known> b = test.figures().known(TestFigure.THERMISTOR_B);
        Optional<Known> c = test.figures().known(TestFigure.THERMISTOR_C);
        return a.isPresent() && b.isPresent()
                ? Optional.of(new Thermistor(
                        a.get().si(), b.get().si(), c.map(Known::si).orElse(0.0)))
                : Optional.empty();
    }

    /** By how much the declared constants read wrong, where they do so most. */
    private void judge(Thermistor declared, ThermistorFit fit) {
        double worst = 0;
        double at = fit.kelvin()[0];
        for (double kelvin : fit.kelvin()) {
            double read = declared.kelvin(fit.curve().ohm(kelvin).orElseThrow());
            if (Math.abs(read - kelvin) >= Math.abs(worst)) {
                worst = read - kelvin;
                at = kelvin;
            }
        }
        Known astray = Known.of(
                Quantity.of(Math.abs(worst), "K"),
                fit.standardKelvin(at),
                Source.of(test.id() + " curve", fit.fit().degreesOfFreedom()),
                Origin.MEASURED,
                test.id());
        sheet.detail(Phrase.of("the declared constants read {word} by {astray} at {at}, where they are farthest off")
                .with("word", worst < 0 ? "too low" : "too high")
                .with("astray", astray, "K")
                .with("at", kelvins(at), "degC"));
    }
}
