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
import servowright.engine.known.Propagation;
import servowright.engine.known.Source;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.RunningFit;
import servowright.engine.numeric.SmoothWindows;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

/**
 * Axis log: what a drive logs of its own axis while it moves, speed, q current and q voltage. The voltages give resistance,
 * back-EMF constant and dead zone, the motion gives inertia and drag.
 */
final class AxisLogTest {
    private static final double MOST_LEFT = 0.2;
    private static final double SEEN = 2;

    /** Two forms of the dead zone whose fits leave squares within this ratio cannot be told apart. */
    private static final double ALIKE = 1.2;

    private static final String VOLTAGES = "voltage equation of the q axis, means over short stretches";

    private final BenchTest test;
    private final Motor motor;
    private final Optional<Known> polePairs;
    private final ResultSheet sheet;
    private final Instruments instruments;

    private AxisLogTest(BenchTest test, Motor motor, Optional<Known> polePairs) {
        this.test = test;
        this.motor = motor;
        this.polePairs = polePairs;
        this.sheet = new ResultSheet(test);
        this.instruments = new Instruments(test.instrument());
    }

    /** Reduces the log. */
    static TestResult of(BenchTest test, Motor motor, Optional<Recording> recording, Optional<Known> polePairs) {
        return new AxisLogTest(test, motor, polePairs).reduced(recording);
    }

    private TestResult reduced(Optional<Recording> recording) {
        if (recording.isEmpty()) {
            return sheet.refused(
                    MotorParameter.PHASE_RESISTANCE,
                    "a recording of " + test.id(),
                    "log speed, q current and q voltage while the axis moves");
        }
        Outcome<Driven> driven = Driven.of(test, recording.get(), sheet);
        Outcome<Trace> volt = Points.trace(test, recording.get(), Wanted.VOLTAGE);
        Optional<Missing<?>> missing = driven instanceof Missing<Driven> a
                ? Optional.of(a)
                : volt instanceof Missing<Trace> b ? Optional.of(b) : Optional.empty();
        if (missing.isPresent()) {
            sheet.missing(MotorParameter.PHASE_RESISTANCE, missing.get());
            return sheet.end();
        }
        Driven found = driven.found().orElseThrow();
        Trace volts = volt.found().orElseThrow();
        if (found.basis().basis() != CurrentBasis.Q_AXIS
                || volts.count() != found.amp().count()) {
            return sheet.refused(
                    MotorParameter.PHASE_RESISTANCE,
                    "q current and q voltage at the same times in " + test.id(),
                    "state channels: {..: q axis current, ..: q axis voltage}");
        }
        values(found, volts);
        return sheet.end();
    }

    private void values(Driven driven, Trace volts) {
        SmoothWindows windows = DrivenRun.windows(driven.amp(), driven.speed());
        double[] u = windows.means(volts.values());
        double[] i = windows.means(driven.amp().values());
        double[] w = windows.means(driven.speed().values());
        Optional<RunningFit> byCurrent = RunningFit.of(u, i, w, senses(windows, driven.amp()));
        Optional<RunningFit> bySpeed = RunningFit.of(u, i, w, senses(windows, driven.speed()));
        Optional<RunningFit> best = better(byCurrent, bySpeed).filter(f -> near(f, u));
        if (best.isEmpty()) {
            sheet.missing(
                    MotorParameter.PHASE_RESISTANCE,
                    "a voltage that follows current and speed in " + test.id(),
                    "let current and speed change independently, forward and back");
            return;
        }
        byCurrent.ifPresent(f -> describe("dead zone with the sense of the current", f));
        bySpeed.ifPresent(f -> describe("dead zone with the sense of the speed", f));
        double[] spread = spread(byCurrent, bySpeed);
        sheet.curves(PointCurves.of(
                "q voltage",
                "fit",
                windows.middles(),
                u,
                best.get().fit().fit().residuals().toArray(),
                "s",
                "V"));
        constants(driven, best.get(), spread);
    }

    private static double[] senses(SmoothWindows windows, Trace trace) {
        return windows.means(Arrays.stream(trace.values()).map(Math::signum).toArray());
    }

    private static Optional<RunningFit> better(Optional<RunningFit> first, Optional<RunningFit> second) {
        if (first.isEmpty() || second.isEmpty()) {
            return first.or(() -> second);
        }
        return squares(first.get()) <= squares(second.get()) ? first : second;
    }

    private static double squares(RunningFit fit) {
        return fit.fit().fit().residualSumOfSquares();
    }

    private static boolean near(RunningFit fit, double[] volts) {
        double mean = Arrays.stream(volts).average().orElse(0);
        double all = Arrays.stream(volts).map(v -> (v - mean) * (v - mean)).sum();
        return squares(fit) < MOST_LEFT * MOST_LEFT * all
                && fit.phaseOhm() > SEEN * fit.fit().standardError(0);
    }

    /** By how much resistance and back-EMF constant differ between the two forms, where both fit alike. */
    private static double[] spread(Optional<RunningFit> first, Optional<RunningFit> second) {
        if (first.isEmpty() || second.isEmpty()) {
            return new double[2];
        }
        double ratio = squares(first.get()) / squares(second.get());
        boolean alike = ratio < ALIKE * ALIKE && ratio > 1 / (ALIKE * ALIKE);
        return alike
                ? new double[] {
                    Math.abs(first.get().phaseOhm() - second.get().phaseOhm()),
                    Math.abs(first.get().emfVoltSecondPerRad() - second.get().emfVoltSecondPerRad())
                }
                : new double[2];
    }

    private void describe(String name, RunningFit fit) {
        sheet.detail(Phrase.of(name + ": {R}, {Ke}, dead zone {Ud}, offset {U0}; {rms} rms left over")
                .with("R", Quantity.of(fit.phaseOhm(), "ohm"), "mohm")
                .with("Ke", Quantity.of(fit.emfVoltSecondPerRad(), "V s/rad"), "mV s/rad")
                .with("Ud", Quantity.of(fit.deadZoneVolt(), "V"), "mV")
                .with("U0", Quantity.of(fit.offsetVolt(), "V"), "mV")
                .with("rms", Quantity.of(fit.fit().fit().residualSd(), "V"), "mV"));
    }

    private void constants(Driven driven, RunningFit fit, double[] spread) {
        double[][] covariance = {
            {fit.fit().covariance().at(0, 0), fit.fit().covariance().at(0, 1)},
            {fit.fit().covariance().at(1, 0), fit.fit().covariance().at(1, 1)}
        };
        List<Known> joint = Propagation.jointly(
                List.of(Quantity.of(fit.phaseOhm(), "ohm"), Quantity.of(fit.emfVoltSecondPerRad(), "V s/rad")),
                covariance,
                test.id() + " voltages",
                fit.fit().degreesOfFreedom(),
                Origin.MEASURED,
                test.id());
        Known ohm = joint.get(0)
                .withPart(Source.of(test.id() + " dead zone 0"), spread[0] / Math.sqrt(3))
                .withPart(
                        Source.of(test.id() + " noise of the current in the voltages"),
                        driven.run().shadow() * fit.phaseOhm())
                .times(instruments.gain(Reads.DRIVE_VOLTAGE))
                .over(instruments.gain(Reads.DRIVE_CURRENT));
        boolean against = fit.emfVoltSecondPerRad() < 0;
        if (against) {
            sheet.remark(
                    "the voltage falls where the speed rises: they are counted in opposite senses; the size was used");
        }
        Known emf = joint.get(1)
                .times(against ? -1 : 1)
                .withPart(Source.of(test.id() + " dead zone 1"), spread[1] / Math.sqrt(3))
                .times(instruments.gain(Reads.DRIVE_VOLTAGE));
        resistance(ohm);
        DrivenValues values = new DrivenValues(test, driven.run(), driven.basis(), sheet);
        values.byTorqueConstant(emf.times(1.5));
        flux(emf);
    }

    private List<Phrase> assumed() {
        List<Phrase> all = new ArrayList<>();
        all.add(Phrase.of("d current is 0, and q current and q voltage are amplitude-invariant, peak of the phase"));
        instruments.assumption(Reads.DRIVE_VOLTAGE).ifPresent(all::add);
        instruments.assumption(Reads.DRIVE_CURRENT).ifPresent(all::add);
        return all;
    }

    private void resistance(Known warm) {
        Surroundings winding = Surroundings.of(test, TestFigure.WINDING_AT, "winding");
        List<Phrase> all = assumed();
        all.addAll(winding.assumptions());
        Working.Sheet working = Working.begin();
        working.note("slope of voltage against current", "{R}", "mohm", VOLTAGES, warm);
        Known cold = ColdWinding.resistance(working, warm, winding.kelvin());
        sheet.value(
                MotorParameter.PHASE_RESISTANCE,
                new Candidate(cold.as(Origin.MEASURED, test.id()), test.id(), working.end(), all));
    }

    private void flux(Known emf) {
        if (polePairs.isEmpty()) {
            FluxReduction.askForPolePairs(sheet, test, motor);
            return;
        }
        FluxReduction flux = new FluxReduction(test, motor);
        assumed().forEach(flux::assume);
        flux.sheet().note("voltage per speed", "{Ke}", "mV s/rad", VOLTAGES, emf);
        flux.addTorque(test.id() + ", Kt = 3/2 Ke", emf.times(1.5), polePairs.get());
        sheet.value(MotorParameter.FLUX_LINKAGE, flux.result());
    }
}
