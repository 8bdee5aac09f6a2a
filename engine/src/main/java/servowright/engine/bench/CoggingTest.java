package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
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
import servowright.engine.machine.TestKind;
import servowright.engine.motor.CoggingFit;
import servowright.engine.motor.TurnOrder;
import servowright.engine.numeric.Reversals;
import servowright.engine.numeric.Statistics;
import servowright.engine.numeric.TurnMeans;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/**
 * Cogging: the current that holds the shaft at many angles, or turns it slowly, forward and back. Half of the sum depends on
 * the position, half of the difference is friction.
 */
final class CoggingTest {
    /** Cogging that passes more often per second is smoothed by the inertia of the rotor (common practice, no source). */
    private static final double MOST_HERTZ = 20;

    /** A turn back counts from this share of the way on, or from a twentieth of a turn. */
    private static final double TURNED_BACK = 0.05;

    private final BenchTest test;
    private final Motor motor;
    private final OptionalInt polePairs;
    private final Optional<Known> torqueConstant;
    private final ResultSheet sheet;
    private final Instruments instruments;
    private final List<Phrase> assumptions = new ArrayList<>();

    private CoggingTest(BenchTest test, Motor motor, Optional<Known> polePairs, Optional<Known> torqueConstant) {
        this.test = test;
        this.motor = motor;
        this.polePairs =
                polePairs.map(p -> OptionalInt.of((int) Math.round(p.si()))).orElse(OptionalInt.empty());
        this.torqueConstant = torqueConstant;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /**
     * Reduces the run.
     *
     * @param torqueConstant torque per q-axis ampere; without it currents are given and no torques
     */
    static TestResult of(
            BenchTest test,
            Motor motor,
            Optional<Recording> recording,
            Optional<Known> polePairs,
            Optional<Known> torqueConstant) {
        return new CoggingTest(test, motor, polePairs, torqueConstant).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        if (recording.isEmpty()) {
            return sheet.refused(
                    MotorParameter.COGGING_TORQUE,
                    "a recording of angle and current in " + test.id(),
                    "record both while the shaft is held or slowly turned all around, forward and back");
        }
        Outcome<Trace> amp = Points.trace(test, recording.get(), Wanted.CURRENT);
        Outcome<Trace> angle = Points.trace(test, recording.get(), Wanted.ANGLE);
        if (amp instanceof Missing<Trace> why) {
            return refused(why);
        }
        if (angle instanceof Missing<Trace> why) {
            return refused(why);
        }
        Trace i = amp.found().orElseThrow();
        Trace rad = angle.found().orElseThrow();
        Outcome<AmpBasis> basis =
                AmpBasis.of(test, test.channels().getOrDefault(i.channel(), "").toLowerCase(Locale.ROOT));
        if (basis instanceof Missing<AmpBasis> why) {
            return refused(why);
        }
        if (i.count() != rad.count()) {
            return sheet.refused(
                    MotorParameter.COGGING_TORQUE,
                    i.channel() + " and " + rad.channel() + " at the same times",
                    "record both without gaps");
        }
        sheet.remarks(i.remarks());
        fit(i, rad, basis.found().orElseThrow());
        Points.trace(test, recording.get(), Wanted.SPEED).found().ifPresent(w -> speed(w, rad));
        return sheet.end();
    }

    private TestResult refused(Missing<?> why) {
        sheet.missing(MotorParameter.COGGING_TORQUE, why);
        return sheet.end();
    }

    private void fit(Trace amp, Trace angle, AmpBasis basis) {
        double[] rad = counted(angle.values());
        double least = Arrays.stream(rad).min().orElse(0);
        double most = Arrays.stream(rad).max().orElse(0);
        double back = Math.min(2 * Math.PI / 20, TURNED_BACK * (most - least));
        int[] senses = Reversals.senses(rad, Math.max(back, 1e-9));
        Optional<CoggingFit> found =
                CoggingFit.of(rad, amp.values(), senses, TurnOrder.expected(polePairs, CoggingOrders.slots(motor)));
        if (most - least < 0.9 * 2 * Math.PI || found.isEmpty()) {
            sheet.missing(
                    MotorParameter.COGGING_TORQUE,
                    "angles all around a turn in " + test.id() + ": " + angle.channel() + " covers "
                            + Math.round(Math.toDegrees(most - least)) + " deg",
                    "go once around and back, with at least 60 readings each way");
            return;
        }
        CoggingFit fit = found.get();
        CoggingOrders orders = new CoggingOrders(fit, motor, polePairs);
        orders.details().forEach(sheet::detail);
        orders.remarks().forEach(sheet::remark);
        curves(fit);
        friction(fit, basis);
        double hertz = orders.strongest() * passes(rad, angle.seconds());
        if (test.kind() == TestKind.COGGING_RUN && hertz > MOST_HERTZ) {
            sheet.missing(
                    MotorParameter.COGGING_TORQUE,
                    "a slow turn in " + test.id() + ": the strongest order passes " + Math.round(hertz)
                            + " times a second and the inertia of the rotor carries it over",
                    "turn it below " + MOST_HERTZ + " passes a second, or hold it at many angles");
            return;
        }
        torque(
                MotorParameter.COGGING_TORQUE,
                "range of the current over the position",
                amps(fit.rangeAmp(), fit.rangeStandardAmp(), "range", Double.POSITIVE_INFINITY),
                basis);
    }

    private void speed(Trace speed, Trace angle) {
        double mean = Math.abs(Statistics.mean(speed.values()));
        if (speed.count() == angle.count() && mean > Statistics.standardDeviation(speed.values())) {
            int[] onward = new int[speed.count()];
            Arrays.fill(onward, 1);
            CoggingFit.of(angle.values(), speed.values(), onward)
                    .ifPresent(f -> CoggingOrders.ofSpeed(f, mean).forEach(sheet::detail));
        }
    }

    /** Turns counted on where the angle jumps back by most of a turn. */
    private static double[] counted(double[] rad) {
        double[] on = rad.clone();
        double turns = 0;
        for (int k = 1; k < on.length; k++) {
            double jump = rad[k] - rad[k - 1];
            turns -= Math.abs(jump) > Math.PI ? 2 * Math.PI * Math.rint(jump / (2 * Math.PI)) : 0;
            on[k] = rad[k] + turns;
        }
        return on;
    }

    /** Turns per second, without regard to the sense. */
    private static double passes(double[] rad, double[] seconds) {
        double way = IntStream.range(1, rad.length)
                .mapToDouble(k -> rad[k] - rad[k - 1])
                .map(Math::abs)
                .sum();
        return way / (2 * Math.PI) / (seconds[seconds.length - 1] - seconds[0]);
    }

    private Known amps(double value, double standard, String what, double freedom) {
        return Known.of(
                Quantity.of(value, "A"),
                standard,
                Source.of(test.id() + " " + what, freedom),
                Origin.MEASURED,
                test.id());
    }

    private void friction(CoggingFit fit, AmpBasis basis) {
        if (fit.frictionAmp().isEmpty()) {
            sheet.remark("one direction only: friction cannot be told from the mean current; go back as well");
            return;
        }
        double amp = fit.frictionAmp().getAsDouble();
        if (amp < 0) {
            sheet.remark(
                    "the current brakes where it should drive: it is counted against the angle; the size was used");
        }
        Known half = amps(Math.abs(amp), fit.frictionStandardAmp(), "friction", CoggingFit.frictionFreedom());
        sheet.detail(Phrase.of("friction, half the difference of both directions: {f}")
                .with("f", half, "A"));
        if (test.kind() == TestKind.HOLD_MAP) {
            sheet.remark(
                    "read at rest: friction gives way as far as it must, so half the difference is the least it can be");
            return;
        }
        torque(MotorParameter.DRY_DRAG, "half the difference of both directions", half, basis);
    }

    private void torque(MotorParameter what, String label, Known amp, AmpBasis basis) {
        if (torqueConstant.isEmpty()) {
            sheet.missing(
                    what,
                    "torque constant of " + motor.name() + ", for the torque behind the current of " + test.id(),
                    "a spin and the pole pairs give it");
            return;
        }
        Working.Sheet working = Working.begin();
        working.note(label, "{i}", "A", "means over small parts of the turn", amp);
        Known torque = working.line(
                what.words(),
                "{" + what.symbol() + "} = {Kt} · {i} · {gI} · " + basis.overQAxis(),
                what.unit(),
                Dimension.TORQUE,
                "torque constant, q-axis current",
                v -> v[0] * v[1] * v[2] * basis.overQAxis(),
                Term.of("Kt", torqueConstant.get(), "N m/A"),
                Term.of("i", amp, "A"),
                Term.of("gI", instruments.gain(Reads.DRIVE_CURRENT)));
        List<Phrase> all = new ArrayList<>(assumptions);
        basis.assumed().ifPresent(all::add);
        instruments.assumption(Reads.DRIVE_CURRENT).ifPresent(all::add);
        sheet.value(what, new Candidate(torque.as(Origin.MEASURED, test.id()), test.id(), working.end(), all));
    }

    private void curves(CoggingFit fit) {
        int[] read = IntStream.range(0, fit.parts())
                .filter(k -> !Double.isNaN(fit.byPosition()[k]))
                .toArray();
        double[] x = Arrays.stream(read)
                .mapToDouble(k -> TurnMeans.middle(k, fit.parts()))
                .toArray();
        double[] y = Arrays.stream(read).mapToDouble(k -> fit.byPosition()[k]).toArray();
        double[] rest = Arrays.stream(read)
                .mapToDouble(k -> fit.byPosition()[k] - fit.mean().at(k))
                .toArray();
        sheet.curves(PointCurves.of("current over the angle", "orders", x, y, rest, "deg", "A"));
    }
}
