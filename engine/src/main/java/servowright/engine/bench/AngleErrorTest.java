package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import servowright.engine.encoder.Angles;
import servowright.engine.encoder.Calibration;
import servowright.engine.encoder.DragFit;
import servowright.engine.encoder.FreeRunFit;
import servowright.engine.encoder.ReferencedFit;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/** Recordings that show the error of an angle sensor over the turn: dragged slowly, free, or beside a reference. */
final class AngleErrorTest {
    private static final int USUAL_ORDERS = 4;
    private static final int BINS = 64;
    private static final int FEW_POLE_PAIRS = 2;

    private final BenchTest test;
    private final Recording recording;
    private final OptionalInt countsPerTurn;
    private final ResultSheet sheet;
    private final int orders;

    AngleErrorTest(BenchTest test, Recording recording, OptionalInt countsPerTurn) {
        this.test = test;
        this.recording = recording;
        this.countsPerTurn = countsPerTurn;
        this.sheet = new ResultSheet(test);
        this.orders = test.figures()
                .get(TestFigure.ORDERS)
                .map(d -> (int) Math.round(d.si()))
                .orElse(USUAL_ORDERS);
    }

    /** The rotor dragged by a field that turns slowly, forwards and back. */
    Sensed drag(Optional<Known> polePairs) {
        if (polePairs.isEmpty()) {
            return Sensed.without(sheet.refused(
                    AxisParameter.COMMUTATION_OFFSET,
                    "pole pairs of " + test.motor(),
                    "count the magnets, or add an alignment"));
        }
        int p = (int) Math.round(polePairs.get().si());
        Outcome<AngleRows> read = AngleRows.of(test, recording, countsPerTurn, AngleRole.COMMANDED, AngleRole.ANGLE);
        if (read instanceof Missing<AngleRows> why) {
            return without(AxisParameter.COMMUTATION_OFFSET, why);
        }
        AngleRows all = read.found().orElseThrow();
        sheet.remarks(all.remarks());
        double[] command = Angles.unwrapped(all.column(AngleRole.COMMANDED));
        Motion motion = Motion.of(command, all.seconds(), 0.2, 5);
        double[] path = picked(command, motion.rows());
        double[] angle = picked(all.column(AngleRole.ANGLE), motion.rows());
        double[] shaft = Arrays.stream(path).map(a -> a / p).toArray();
        boolean against = Motion.against(shaft, angle);
        double[] signed = against ? negated(angle) : angle;
        Calibration calibration = DragFit.of(motion.direction(), path, signed, p, orders);
        if (calibration instanceof Calibration.Fitted fitted) {
            offset(fitted, p, against);
            if (p <= FEW_POLE_PAIRS) {
                sheet.remark("with so few pole pairs cogging falls on the orders of the sensor: run it free instead");
            }
            tell(fitted, shaft);
        } else if (calibration instanceof Calibration.Refused why) {
            AngleFit.refused(sheet, AxisParameter.COMMUTATION_OFFSET, test, why);
        }
        double speed = all.timed() ? motion.speed() / p : 0;
        return end(calibration, against, speed);
    }

    private void offset(Calibration.Fitted fitted, int p, boolean against) {
        Working.Sheet working = Working.begin();
        Known lag =
                AngleFit.angle(test, p * fitted.lagRad(), p * AngleFit.levelErrorRad(fitted), " scatter of the lag");
        Known offset = AngleFit.uneven(
                test,
                AngleFit.angle(
                        test,
                        Angles.wrapped(p * fitted.error().meanRad()),
                        p * AngleFit.levelErrorRad(fitted),
                        " scatter of the mean"),
                lag);
        working.note("friction, half of the difference of the directions", "{δ}", "deg", "torque balance", lag);
        working.note(
                "commutation offset, mean of both directions",
                "{θ0}",
                "deg",
                "θ_read = θ_field/p + c0 ∓ lag + harmonics by least squares; θ0 = p c0",
                offset);
        sheet.value(
                AxisParameter.COMMUTATION_OFFSET,
                new Candidate(offset, test.id(), working.end(), List.of(AngleFit.UNEVEN)));
        sheet.value(AxisParameter.FRICTION_LAG, new Candidate(lag, test.id(), working.end()));
        if (against) {
            sheet.remark("the sensor counts against the field: set its direction, or swap two phases");
        }
    }

    /** The shaft on its own; its true angle is smooth in time. */
    Sensed freeRun() {
        Outcome<AngleRows> read = AngleRows.of(test, recording, countsPerTurn, AngleRole.ANGLE);
        if (read instanceof Missing<AngleRows> why) {
            return without(AxisParameter.ANGLE_ERROR, why);
        }
        AngleRows rows = read.found().orElseThrow();
        sheet.remarks(rows.remarks());
        double[] seconds = rows.seconds();
        if (!rising(seconds)) {
            return Sensed.without(sheet.refused(
                    AxisParameter.ANGLE_ERROR,
                    "rising times in " + recording.name(),
                    "export the recording with its times, or state sample_interval"));
        }
        double[] angle = rows.column(AngleRole.ANGLE);
        Calibration calibration = FreeRunFit.of(seconds, angle, orders);
        double[] turned = Angles.unwrapped(angle);
        double travel = turned[turned.length - 1] - turned[0];
        double speed = Math.abs(travel) / (seconds[seconds.length - 1] - seconds[0]);
        if (calibration instanceof Calibration.Fitted fitted) {
            sheet.detail(Phrase.of("{turns} turns at {speed} on average, motion of order {P} in time")
                    .with("turns", Math.abs(travel) / (2 * Math.PI))
                    .with("speed", new Quantity(speed, Dimension.SPEED), "rpm")
                    .with("P", fitted.polynomialOrder()));
            sheet.remark("speed that truly ripples at an order of the shaft looks the same in one run: repeat it at "
                    + "two more speeds, the shaft upright");
            tell(fitted, turned);
        } else if (calibration instanceof Calibration.Refused why) {
            AngleFit.refused(sheet, AxisParameter.ANGLE_ERROR, test, why);
        }
        return end(calibration, false, speed);
    }

    /** Beside a sensor that is trusted. */
    Sensed reference() {
        Outcome<AngleRows> read = AngleRows.of(test, recording, countsPerTurn, AngleRole.REFERENCE, AngleRole.ANGLE);
        if (read instanceof Missing<AngleRows> why) {
            return without(AxisParameter.ANGLE_ERROR, why);
        }
        AngleRows all = read.found().orElseThrow();
        sheet.remarks(all.remarks());
        double[] path = Angles.unwrapped(all.column(AngleRole.REFERENCE));
        Motion motion = Motion.of(path, all.seconds(), 0.8, 1.25);
        double[] shaft = picked(path, motion.rows());
        double[] angle = picked(all.column(AngleRole.ANGLE), motion.rows());
        boolean against = Motion.against(shaft, angle);
        double[] signed = against ? negated(angle) : angle;
        Calibration calibration = motion.bothWays()
                ? DragFit.of(motion.direction(), shaft, signed, 1, orders)
                : ReferencedFit.of(shaft, signed, ReferencedFit.evening(shaft, BINS), orders);
        double speed = test.figures().known(TestFigure.SPEED).map(Known::si).orElse(all.timed() ? motion.speed() : 0.0);
        if (calibration instanceof Calibration.Fitted fitted) {
            sheet.detail(Phrase.of("mean error {mean}, free of the direction")
                    .with(
                            "mean",
                            AngleFit.angle(
                                    test,
                                    fitted.error().meanRad(),
                                    AngleFit.levelErrorRad(fitted),
                                    " scatter of the mean"),
                            "deg"));
            delay(fitted, motion.bothWays(), speed);
            tell(fitted, shaft);
        } else if (calibration instanceof Calibration.Refused why) {
            AngleFit.refused(sheet, AxisParameter.ANGLE_ERROR, test, why);
        }
        return end(calibration, against, speed);
    }

    private void delay(Calibration.Fitted fitted, boolean bothWays, double radPerSecond) {
        if (!bothWays) {
            sheet.remark("one direction only: delay and play are hidden in the mean error");
            return;
        }
        Known lag = AngleFit.angle(test, fitted.lagRad(), AngleFit.levelErrorRad(fitted), " scatter of the lag");
        sheet.detail(
                Phrase.of("half of the difference of the directions is {lag}").with("lag", lag, "deg"));
        if (!(radPerSecond > 0)) {
            sheet.missing(
                    AxisParameter.ANGLE_DELAY,
                    "the speed of " + test.id() + ": without it delay and play cannot be told apart",
                    "state speed, or record times; a second speed tells delay from play");
            return;
        }
        Working.Sheet working = Working.begin();
        Known speed = test.figures()
                .known(TestFigure.SPEED)
                .orElseGet(() ->
                        Known.exact(new Quantity(radPerSecond, Dimension.SPEED), Origin.MEASURED, recording.name()));
        Known delay = working.line(
                "delay, if all of the difference is delay",
                "{τ} = {lag} / {ω}",
                "us",
                Dimension.TIME,
                "a constant delay trails in proportion to the speed",
                v -> v[0] / v[1],
                Term.of("lag", lag, "deg"),
                Term.of("ω", speed, "rpm"));
        sheet.value(
                AxisParameter.ANGLE_DELAY,
                new Candidate(
                        delay,
                        test.id(),
                        working.end(),
                        List.of(Phrase.of("all of the difference between the directions taken as delay; play "
                                + "looks the same at one speed, a second speed tells them apart"))));
    }

    private void tell(Calibration.Fitted fitted, double[] shaft) {
        AngleFit.error(sheet, test, fitted);
        sheet.curves(AngleFit.curves(fitted, shaft));
        if (fitted.ordersMissing()) {
            sheet.remark(Phrase.of("what is left over is not noise: cogging, or harmonics above {orders}")
                    .with("orders", orders));
        }
    }

    private Sensed without(AxisParameter what, Missing<AngleRows> why) {
        sheet.missing(what, why);
        return Sensed.without(sheet.end());
    }

    private Sensed end(Calibration calibration, boolean against, double radPerSecond) {
        return Sensed.of(sheet.end(), new AngleEvidence.Calibrated(test.id(), calibration, against, radPerSecond));
    }

    private static boolean rising(double[] seconds) {
        for (int i = 1; i < seconds.length; i++) {
            if (!(seconds[i] > seconds[i - 1])) {
                return false;
            }
        }
        return seconds.length > 1;
    }

    private static double[] picked(double[] values, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
    }

    private static double[] negated(double[] values) {
        return Arrays.stream(values).map(v -> -v).toArray();
    }
}
