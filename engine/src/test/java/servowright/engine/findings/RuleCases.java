package servowright.engine.findings;

import static servowright.engine.prediction.Invented.candidate;
import static servowright.engine.prediction.Invented.sound;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Place;
import servowright.engine.known.Working;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.DutyFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.StoppedQueue;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Invented;
import servowright.engine.quantity.Quantity;

/** For each rule one machine on which it fires; all of them are the sound machine with one thing changed. */
final class RuleCases {
    private RuleCases() {}

    /** Machines by rule id. */
    static Map<String, Supplier<Invented>> firing() {
        Map<String, Supplier<Invented>> cases = new LinkedHashMap<>();
        motors(cases);
        bench(cases);
        fit(cases);
        supply(cases);
        mount(cases);
        bus(cases);
        cases.putAll(SensorCases.firing());
        captured(cases);
        return cases;
    }

    /** The machine on which the rule of that id fires. */
    static Invented firingFor(String id) {
        Supplier<Invented> machine = firing().get(id);
        if (machine == null) {
            throw new IllegalArgumentException("no machine here makes " + id + " fire");
        }
        return machine.get();
    }

    private static void mount(Map<String, Supplier<Invented>> cases) {
        cases.put("sensor-field", () -> sound().arm(AxisFigure.GAP, "0.5 mm"));
        cases.put("element-depth", () -> sound().without(SensorFigure.DEPTH));
        cases.put("tilt-times-offset", () -> sound().arm(AxisFigure.SENSOR_OFFSET, "2 mm"));
        cases.put("start-under-load", () -> sound().sensor(SensorKind.INCREMENTAL));
    }

    private static void motors(Map<String, Supplier<Invented>> cases) {
        cases.put(
                "pole-pairs-disagree",
                () -> sound().candidates(
                                MotorParameter.POLE_PAIRS,
                                candidate(7, "", 0, Origin.MEASURED, "spin"),
                                candidate(14, "", 0, Origin.DATA_SHEET, "label")));
        cases.put(
                "basis-mismatch",
                () -> sound().contradiction(
                                MotorParameter.FLUX_LINKAGE,
                                candidate(5.0 / Math.sqrt(2), "mWb", 0.02, Origin.DATA_SHEET, "label"),
                                candidate(5.0, "mWb", 0.002, Origin.MEASURED, "spin"),
                                "√2, peak against RMS"));
        cases.put(
                "hook-up-mismatch",
                () -> sound().contradiction(
                                MotorParameter.PHASE_RESISTANCE,
                                candidate(0.2, "ohm", 0.05, Origin.DATA_SHEET, "label"),
                                candidate(0.1, "ohm", 0.01, Origin.MEASURED, "resistance"),
                                "1/2, two terminals against phase"));
        cases.put(
                "label-against-bench",
                () -> sound().contradiction(
                                MotorParameter.FLUX_LINKAGE,
                                candidate(4.4, "mWb", 0.02, Origin.DATA_SHEET, "label"),
                                candidate(5.0, "mWb", 0.002, Origin.MEASURED, "spin"),
                                ""));
        cases.put("basis-not-stated", () -> sound().motor(MotorFigure.SPEED_CONSTANT, "158 rpm/V [label]"));
        cases.put("odd-magnets", () -> sound().motor(MotorFigure.MAGNETS, "13"));
        cases.put("slots-and-poles", () -> sound().motor(MotorFigure.SLOTS, "14"));
        cases.put("cogging-count", () -> sound().motor(MotorFigure.DETENTS, "60"));
    }

    private static void bench(Map<String, Supplier<Invented>> cases) {
        cases.put("phases-differ", () -> sound().test(resistance(0.12)));
        cases.put("test-refused", () -> sound().test(refused()));
        cases.put("thermistor-constants", () -> sound().test(thermistor()));
    }

    private static void fit(Map<String, Supplier<Invented>> cases) {
        cases.put("speed-reach", () -> sound().lift(DutyFigure.SPEED, "450 rpm").lift(DutyFigure.TRAVEL, "20 turns"));
        cases.put("rotor-speed", () -> sound().motor(MotorFigure.TOP_SPEED, "1200 rpm [label]"));
        cases.put("electrical-frequency", () -> sound().drive(DriveFigure.ELECTRICAL_FREQUENCY, "120 Hz"));
        cases.put("control-steps", () -> sound().drive(DriveFigure.LOOP_RATE, "1.2 kHz"));
        cases.put("angle-lost", () -> sound().drive(DriveFigure.LOOP_RATE, "2 kHz"));
        cases.put("peak-current", () -> sound().drive(DriveFigure.PEAK_CURRENT, "6 A [q axis]"));
        cases.put("continuous-current", () -> sound().drive(DriveFigure.CONTINUOUS_CURRENT, "2.5 A [q axis]"));
        cases.put("drive-power", () -> sound().drive(DriveFigure.POWER, "15 W"));
        cases.put("torque-reserve", () -> sound().motor(MotorFigure.THERMAL_RESISTANCE, "60 K/W ± 1 K/W [measured]"));
        cases.put("rated-torque", () -> sound().motor(MotorFigure.RATED_TORQUE, "0.1 N m [label]"));
    }

    private static void supply(Map<String, Supplier<Invented>> cases) {
        cases.put("supply-window", () -> sound().supply(SupplyFigure.VOLTAGE, "20..37 V"));
        cases.put(
                "overspeed-into-bus",
                () -> sound().drive(DriveFigure.VOLTAGE, "12..29 V").arm(AxisFigure.MOTOR_TURNS, "40"));
        cases.put("returned-current", () -> sound().supply(SupplyFigure.TAKES_BACK, "0.1 A"));
        cases.put(
                "bus-rise",
                () -> sound().mains().without(SupplyFigure.TAKES_BACK).supply(SupplyFigure.CAPACITANCE, "0.2 mF"));
        cases.put("supply-current", () -> sound().supply(SupplyFigure.CURRENT, "2 A"));
        cases.put("fuse", () -> sound().supply(SupplyFigure.FUSE, "1 A"));
    }

    private static void bus(Map<String, Supplier<Invented>> cases) {
        cases.put("bus-load", () -> sound().bus(BusFigure.COMMAND_PERIOD, "0.3 ms"));
        cases.put("bus-response", () -> sound().bus(BusFigure.FEEDBACK_PERIOD, "0.3 ms"));
        cases.put("bus-same-id", () -> sound().message("battery", 0x201, "100 ms"));
        cases.put("bus-terminators", () -> sound().bus(BusFigure.TERMINATORS, "3"));
        cases.put("bus-stub", () -> sound().bus(BusFigure.STUB, "2 m"));
        cases.put("bus-length", () -> sound().bus(BusFigure.CABLE, "60 m"));
        cases.put("bus-far-end", () -> sound().bus(BusFigure.CABLE, "400 m"));
        cases.put("bus-timing", () -> sound().controller("arm", 5, 13, 1, 1));
        cases.put("bus-ground-shift", () -> sound().bus(BusFigure.GROUND_SHIFT, "4 V"));
        cases.put("bus-watchdog", () -> sound().bus(BusFigure.WATCHDOG, "2 ms"));
        cases.put("bus-stop-release", () -> sound().queue(StoppedQueue.KEPT));
        cases.put("bus-off-return", () -> sound().bus(BusFigure.RESTART, "5 ms"));
    }

    private static void captured(Map<String, Supplier<Invented>> cases) {
        cases.put("bus-stamps", () -> sound().capture(c -> c.batched(4_000_000)));
        cases.put("bus-message-missing", () -> sound().capture(c -> c.off(Invented.ARM, 800, 10_000)));
        cases.put("bus-message-period", () -> sound().capture(c -> c.stretched("arm feedback", 1.1)));
        cases.put("bus-arrival", () -> sound().capture(c -> c.jittering("arm command", 900_000)));
        cases.put("bus-not-planned", () -> sound().capture(c -> c.further(0x555, 10_000_000)));
        cases.put("bus-load-seen", () -> sound().capture(c -> c.further(0x555, 150_000)));
        cases.put("bus-two-senders", () -> sound().capture(c -> c.twin("arm heartbeat", 31_000_000)));
        cases.put("bus-errors-seen", () -> sound().capture(c -> c.noisy(1e-4)));
        cases.put("bus-restart-seen", () -> sound().capture(c -> c.booting(1, 1_000_100_000)));
        cases.put("bus-signal-scale", () -> sound().capture(c -> c.scaled(9.55)));
        cases.put("bus-queue-let-go", () -> sound().capture(c -> c.stopped(800, 1000)));
    }

    static TestResult resistance(double spread) {
        return new TestResult(
                test(TestKind.RESISTANCE, "resistance spinner 1"),
                Map.of(
                        MotorParameter.PHASE_RESISTANCE,
                        Outcome.answer(
                                candidate(0.1, "ohm", 0.01, Origin.MEASURED, "resistance spinner 1"), Working.NONE)),
                List.of(Phrase.of("the phases differ by {spread}").with("spread", Quantity.number(spread), "%")),
                List.of(),
                List.of());
    }

    /** Constants that read 18 K wrong. */
    private static TestResult thermistor() {
        return new TestResult(
                test(TestKind.THERMISTOR_CHECK, "thermistor check spinner 1"),
                Map.of(),
                List.of(Phrase.of("the declared constants read wrong by {astray}")
                        .with("astray", Quantity.of(18, "K"), "K")),
                List.of(),
                List.of());
    }

    private static TestResult refused() {
        Outcome<Candidate> missing =
                Outcome.missing("sample interval of spin.csv", "state sample_interval in bench.yaml");
        return new TestResult(
                test(TestKind.SPIN, "spin spinner 1"),
                Map.of(MotorParameter.FLUX_LINKAGE, missing),
                List.of(),
                List.of(),
                List.of());
    }

    private static BenchTest test(TestKind kind, String id) {
        return new BenchTest(
                id,
                new Place("bench.yaml", 1, "tests"),
                kind,
                "spinner",
                Optional.empty(),
                Map.of(),
                Figures.<TestFigure>none(),
                List.of(),
                Map.of());
    }
}
