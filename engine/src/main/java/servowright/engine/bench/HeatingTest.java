package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;
import servowright.engine.thermal.CoolingCurve;

/**
 * Heating: the motor is loaded until its temperature settles, the current is taken away, and the winding's resistance is read
 * several times while it cools. Carried back to the moment of switching off it gives the temperature of the winding, and
 * with the loss the thermal resistance to the air.
 */
final class HeatingTest {
    /** Common practice for small motors: the first reading within half a minute. */
    private static final double LATE_SECOND = 30;

    private final BenchTest test;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final Working.Sheet working = Working.begin();
    private final List<Phrase> assumptions = new ArrayList<>();

    private HeatingTest(BenchTest test) {
        this.test = test;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /** Reduces the readings after switching off, or a run followed from cold. */
    static TestResult of(BenchTest test, Motor motor, Optional<Recording> recording) {
        return HeatingRows.followed(test)
                ? WarmingTest.of(test, motor, recording)
                : new HeatingTest(test).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        Outcome<Points> read = Points.of(test, recording, Wanted.AFTER, Wanted.RESISTANCE);
        if (read instanceof Missing<Points> why) {
            sheet.missing(MotorParameter.THERMAL_RESISTANCE, why);
            return sheet.end();
        }
        if (test.figures().get(TestFigure.COLD_RESISTANCE).isEmpty()
                || test.figures().get(TestFigure.WINDING_AT).isEmpty()
                || test.figures().get(TestFigure.AIR_AT).isEmpty()) {
            return sheet.refused(
                    MotorParameter.THERMAL_RESISTANCE,
                    "the winding cold, and the air at the end, in " + test.id(),
                    "state cold_resistance with winding_at, read through the same leads before the run, and air_at");
        }
        Points points = read.found().orElseThrow();
        sheet.remarks(points.remarks());
        Optional<CoolingCurve> curve = CoolingCurve.of(points.x(), points.y());
        if (curve.isEmpty()) {
            return sheet.refused(
                    MotorParameter.THERMAL_RESISTANCE,
                    "four or more resistances that fall while the winding cools in " + test.id(),
                    "read every 10 to 20 s after switching off, the first within 30 s");
        }
        temperature(points, curve.get());
        return sheet.end();
    }

    private void temperature(Points points, CoolingCurve curve) {
        sheet.curves(PointCurves.of(
                "resistance while cooling", "exponential", points.x(), points.y(), curve.restsOhm(), "s", "ohm"));
        instruments.assumption(Reads.METER_RESISTANCE).ifPresent(assumptions::add);
        Known hot = hot(points, curve);
        Known cold = instruments.limited(
                test.figures().known(TestFigure.COLD_RESISTANCE).orElseThrow(), Reads.METER_RESISTANCE);
        Known coldAt = temperature(TestFigure.WINDING_AT, "winding");
        Known air = temperature(TestFigure.AIR_AT, "air");
        if (!(hot.si() > cold.si())) {
            sheet.missing(
                    MotorParameter.THERMAL_RESISTANCE,
                    "a warm resistance above the cold one in " + test.id(),
                    "read both through the same leads and terminals");
            return;
        }
        Known winding = working.line(
                "winding when the current was taken away",
                "{t2} = {R2} / {R1} · (235 + {t1}) − 235",
                "degC",
                Dimension.TEMPERATURE,
                "IEC 60034-1, temperature by resistance (formula seen as quoted)",
                v -> WindingResistance.temperature(v[1], v[2], v[0], 300, Conductor.COPPER_IEC)
                        .windingKelvin(),
                Term.of("R2", hot, "mohm"),
                Term.of("R1", cold, "mohm"),
                Term.of("t1", coldAt, "degC"));
        Known rise = winding.minus(air);
        sheet.detail(Phrase.of("winding at {t} when the current was taken away, {rise} above the air")
                .with("t", winding, "degC")
                .with("rise", rise, "K"));
        resistance(rise, hot);
    }

    /** Resistance at the moment of switching off. */
    private Known hot(Points points, CoolingCurve curve) {
        double first = Arrays.stream(points.x()).min().orElse(0);
        if (first > LATE_SECOND) {
            sheet.remark(Phrase.of("the first reading came {t} after switching off: what cooled before it is not seen")
                    .with("t", Quantity.of(first, "s"), "s"));
        }
        sheet.detail(Phrase.of("carried back to switching off: {R} by an exponential of {tau}, {P} by a parabola")
                .with("R", Quantity.of(curve.startOhm(), "ohm"), "mohm")
                .with("tau", Quantity.of(curve.tauSecond(), "s"), "s")
                .with("P", Quantity.of(curve.parabolaOhm(), "ohm"), "mohm"));
        Known start = Known.of(
                Quantity.of(curve.startOhm(), "ohm"),
                curve.standardOhm(),
                Source.of(test.id() + " scatter", curve.freedom()),
                Origin.MEASURED,
                test.id());
        return working.note(
                "resistance at the moment of switching off",
                "{R2}",
                "mohm",
                "exponential through the readings while cooling",
                instruments.limited(start, Reads.METER_RESISTANCE));
    }

    private Known temperature(TestFigure figure, String part) {
        Surroundings read = Surroundings.of(test, figure, part);
        read.assumptions().stream().filter(a -> !assumptions.contains(a)).forEach(assumptions::add);
        return read.kelvin();
    }

    private void resistance(Known rise, Known hot) {
        Optional<Known> loss = test.figures().known(TestFigure.LOSS);
        Optional<Known> amp = test.figures().known(TestFigure.HEATING_CURRENT);
        if (loss.isEmpty() && amp.isEmpty()) {
            sheet.missing(
                    MotorParameter.THERMAL_RESISTANCE,
                    "the heat put in at the end of " + test.id(),
                    "state loss, or heating_current for direct current through the terminals read");
            return;
        }
        Known watt = loss.orElseGet(() -> working.line(
                "heat put in",
                "{P} = {I}² · {R2}",
                "W",
                Dimension.POWER,
                "Joule's law, direct current through the terminals read",
                v -> v[0] * v[0] * v[1],
                Term.of("I", amp.orElseThrow(), "A"),
                Term.of("R2", hot, "mohm")));
        Known thermal = working.line(
                "thermal resistance winding to air",
                "{Rth} = {ΔT} / {P}",
                "K/W",
                Dimension.THERMAL_RESISTANCE,
                "settled heat: what is put in flows off",
                v -> v[0] / v[1],
                Term.of("ΔT", rise, "K"),
                Term.of("P", watt, "W"));
        sheet.value(
                MotorParameter.THERMAL_RESISTANCE,
                new Candidate(thermal.as(Origin.MEASURED, test.id()), test.id(), working.end(), assumptions));
    }
}
