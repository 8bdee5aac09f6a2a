package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motion.CoastDown;
import servowright.engine.recording.Recording;

/**
 * One kind of test with a recording that it reduces well, and what is true of it, to be fed worse ones.
 *
 * @param reduced what the test makes of a recording of that name
 * @param truth   per parameter, SI
 */
record Fed(
        TestKind kind,
        Recording good,
        java.util.function.Function<Recording, TestResult> reduced,
        Map<Sought, Double> truth) {
    private static final Motor PAIRS = Given.motor(MotorFigure.POLE_PAIRS, "7");

    private static final Motor KNOWN = Given.motor(
            MotorFigure.POLE_PAIRS, "7",
            MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.1 %",
            MotorFigure.RESISTANCE, "50 mohm ± 0.5 % [phase, 20 degC]");

    @Override
    public String toString() {
        return kind.words();
    }

    /** Every kind that takes a recording. */
    static Stream<Fed> all() {
        return Stream.of(
                spin(),
                step(),
                coastDown(),
                noLoad(),
                stairs(),
                shortCircuit(),
                acceleration(),
                axisLog(),
                cogging(TestKind.COGGING_RUN),
                cogging(TestKind.HOLD_MAP),
                zero(),
                sensing(),
                sine(),
                response(),
                loadCurve(),
                event(),
                thermistor(),
                heating(),
                FedOnAxis.handTurn(),
                FedOnAxis.slowDrag(),
                FedOnAxis.freeRun(),
                FedOnAxis.reference());
    }

    private static Fed of(Motor motor, BenchTest test, Recording good, Object... truth) {
        Map<Sought, Double> all = new LinkedHashMap<>();
        for (int k = 0; k < truth.length; k += 2) {
            all.put((Sought) truth[k], (Double) truth[k + 1]);
        }
        return new Fed(test.kind(), good, r -> Given.reduced(motor, test, r), all);
    }

    private static double[] each(double[] values, DoubleUnaryOperator f) {
        return Arrays.stream(values).map(f).toArray();
    }

    private static Fed spin() {
        double peak = Math.sqrt(3) * 2.5e-3 * 2 * Math.PI * 70;
        double[] wave = Given.sampled(4000, 50e-6, t -> {
            double a = 2 * Math.PI * 70.3 * t + 0.3;
            return 70.3 / 70 * peak * (Math.sin(a) + 0.03 * Math.sin(5 * a + 1));
        });
        BenchTest test = Given.spin("spin hub 1")
                .recorded("a.csv")
                .channel("u", "A to B")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 1 K")
                .limits("voltage", "± 0.5 %")
                .done();
        double[] seen = Given.eightBit(Given.noisy(wave, 0.01 * peak, new Random(1)), 1.3 * peak);
        return of(
                PAIRS,
                test,
                Given.recording("a.csv", 50e-6, Given.channel("u", "V", seen)),
                MotorParameter.FLUX_LINKAGE,
                2.5e-3);
    }

    /** 5.4 mH per phase, 17 ohm between terminals and a shunt of 1 ohm, read with 10 bits. */
    private static Fed step() {
        double[] v = Given.sampled(1000, 10e-6, t -> t < 1e-3 ? 0 : -Math.expm1(-(t - 1e-3) / 600e-6));
        BenchTest test = Given.step("inductance step hub 1")
                .recorded("a.csv")
                .channel("u", "shunt, A to B")
                .with(TestFigure.WINDING_AT, "20 degC ± 1 K")
                .with(TestFigure.SHUNT, "1 ohm ± 1 %")
                .done();
        Motor motor = Given.motor(MotorFigure.RESISTANCE, "8.5 ohm ± 0.3 % [phase, 20 degC]");
        double[] seen = each(Given.noisy(v, 0.008, new Random(2)), u -> 2.6 / 1024 * Math.rint(u * 1024 / 2.6));
        return of(
                motor,
                test,
                Given.recording("a.csv", 10e-6, Given.channel("u", "V", seen)),
                MotorParameter.PHASE_INDUCTANCE,
                5.4e-3);
    }

    private static Fed coastDown() {
        CoastDown shaft = new CoastDown(4e-4, 0.01, 2e-5, 0);
        double[] w = Given.sampled(4000, 5e-3, t -> t < 0.5 ? 500 : shaft.radPerS(500, t - 0.5));
        BenchTest test = Given.coastDown("coast-down hub 1")
                .recorded("a.csv")
                .channel("w", "speed")
                .with(TestFigure.INERTIA, "4 kg cm2 ± 0.2 %")
                .limits("speed", "± 0.1 %")
                .done();
        return of(
                PAIRS,
                test,
                Given.recording("a.csv", 5e-3, Given.channel("w", "rad/s", Given.noisy(w, 0.5, new Random(3)))),
                MotorParameter.DRY_DRAG,
                0.01,
                MotorParameter.VISCOUS_DRAG,
                2e-5);
    }

    private static Fed noLoad() {
        Random random = new Random(4);
        double[] speed = NoLoadTestTest.stairs(500);
        double[] amp = Given.noisy(each(speed, NoLoadTestTest::amp), 0.05, random);
        return of(
                NoLoadTestTest.MOTOR,
                NoLoadTestTest.recorded().done(),
                NoLoadTestTest.recording(Given.noisy(speed, 0.5, random), amp),
                MotorParameter.DRY_DRAG,
                0.01,
                MotorParameter.VISCOUS_DRAG,
                2e-5);
    }

    private static Fed stairs() {
        Random random = new Random(5);
        double[] set = Given.sampled(4000, 1e-3, t -> Math.floor(t * 2) / 8 * 10);
        BenchTest test = Given.test(TestKind.TORQUE_STAIRS)
                .recorded("a.csv")
                .channel("i", "q axis current")
                .channel("T", "torque")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 1 K")
                .limits("torque", "± 0.5 %")
                .limits("current", "± 0.5 %")
                .done();
        double kt = 1.5 * 7 * 2.5e-3;
        return of(
                PAIRS,
                test,
                Given.recording(
                        "a.csv",
                        1e-3,
                        Given.channel("i", "A", Given.noisy(set, 0.02, random)),
                        Given.channel("T", "N m", Given.noisy(each(set, i -> kt * i), 0.2 * kt, random))),
                MotorParameter.FLUX_LINKAGE,
                2.5e-3);
    }

    private static Fed shortCircuit() {
        Random random = new Random(6);
        double[] speed = Given.sampled(3000, 1e-2, t -> 50 + 20 * t);
        double[] amp = each(speed, w -> 7 * w * 2.5e-3 / Math.hypot(0.05, 7 * w * 60e-6));
        BenchTest test = Given.test(TestKind.SHORT_CIRCUIT)
                .recorded("a.csv")
                .channel("w", "speed")
                .channel("i", "q axis current")
                .with(TestFigure.WINDING_AT, "20 degC ± 0.5 K")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 0.5 K")
                .limits("current", "± 0.5 %")
                .limits("speed", "± 0.1 %")
                .done();
        return of(
                KNOWN,
                test,
                Given.recording(
                        "a.csv",
                        1e-2,
                        Given.channel("w", "rad/s", Given.noisy(speed, 0.5, random)),
                        Given.channel("i", "A", Given.noisy(amp, 0.2, random))),
                MotorParameter.D_INDUCTANCE,
                60e-6);
    }

    private static Fed acceleration() {
        AxisLogTestTest.Truth m = AxisLogTestTest.PLAIN;
        return of(
                KNOWN,
                AxisLogTestTest.test(TestKind.ACCELERATION).done(),
                AxisLogTestTest.log(m, 1, new Random(7)),
                MotorParameter.ROTOR_INERTIA,
                m.inertia(),
                MotorParameter.DRY_DRAG,
                m.dry(),
                MotorParameter.VISCOUS_DRAG,
                m.viscous());
    }

    private static Fed axisLog() {
        AxisLogTestTest.Truth m = AxisLogTestTest.PLAIN;
        return of(
                PAIRS,
                AxisLogTestTest.test(TestKind.AXIS_LOG).done(),
                AxisLogTestTest.log(m, 1, new Random(8)),
                MotorParameter.PHASE_RESISTANCE,
                m.ohm(),
                MotorParameter.FLUX_LINKAGE,
                m.flux(),
                MotorParameter.ROTOR_INERTIA,
                m.inertia(),
                MotorParameter.DRY_DRAG,
                m.dry(),
                MotorParameter.VISCOUS_DRAG,
                m.viscous());
    }

    private static Fed cogging(TestKind kind) {
        Recording good = CoggingTestTest.around(CoggingTestTest::cogging, 0.06, 0.02, new Random(9));
        double torque = 0.05 * CoggingTestTest.range(CoggingTestTest::cogging);
        return kind == TestKind.HOLD_MAP
                ? of(
                        CoggingTestTest.MOTOR,
                        CoggingTestTest.test(kind).done(),
                        good,
                        MotorParameter.COGGING_TORQUE,
                        torque)
                : of(
                        CoggingTestTest.MOTOR,
                        CoggingTestTest.test(kind).done(),
                        good,
                        MotorParameter.COGGING_TORQUE,
                        torque,
                        MotorParameter.DRY_DRAG,
                        0.003);
    }

    private static Fed zero() {
        double[][] still = new double[3][];
        for (int k = 0; k < 3; k++) {
            double off = CurrentSensingTestTest.OFFSET[k];
            still[k] = Given.noisy(Given.sampled(2000, 1e-3, t -> off), 0.02, new Random(40 + k));
        }
        return sensed(TestKind.CURRENT_ZERO, still);
    }

    private static Fed sensing() {
        return sensed(
                TestKind.CURRENT_SENSING,
                CurrentSensingTestTest.currents(
                        CurrentSensingTestTest.OFFSET, CurrentSensingTestTest.GAIN, 0.03, new Random(13)));
    }

    private static Fed sensed(TestKind kind, double[]... amp) {
        double[] off = CurrentSensingTestTest.OFFSET;
        List<Object> truth = new ArrayList<>(List.of(
                SensingParameter.OFFSET_A,
                off[0],
                SensingParameter.OFFSET_B,
                off[1],
                SensingParameter.OFFSET_C,
                off[2]));
        if (kind == TestKind.CURRENT_SENSING) {
            truth.addAll(List.of(SensingParameter.GAIN_B, 1.03, SensingParameter.GAIN_C, 0.98));
        }
        return of(
                Given.motor(),
                CurrentSensingTestTest.test(kind).done(),
                CurrentSensingTestTest.recording(amp),
                truth.toArray());
    }

    private static Fed sine() {
        ResponseTestTest.Truth m = ResponseTestTest.TACHO;
        double w = 2 * Math.PI * 1.6;
        BenchTest test = Given.test(TestKind.SINE_RESPONSE)
                .recorded("a.csv")
                .channel("u", "input")
                .channel("y", "output")
                .done();
        return of(
                Given.motor(),
                test,
                ResponseTestTest.sine("a.csv", 1.6, m, 0, new Random(14)),
                ResponseParameter.RATIO,
                m.gain() / Math.hypot(1, w * m.tau()),
                ResponseParameter.PHASE,
                -Math.atan(w * m.tau()) - w * m.delay());
    }

    private static Fed response() {
        ResponseTestTest.Truth m = ResponseTestTest.PLAIN;
        Random random = new Random(15);
        double[] in = ResponseTestTest.excitation(random);
        return of(
                Given.motor(),
                ResponseTestTest.run(),
                ResponseTestTest.recording(in, Given.noisy(ResponseTestTest.answer(m, in), 3, random)),
                ResponseParameter.GAIN,
                m.gain(),
                ResponseParameter.TIME_CONSTANT,
                m.tau(),
                ResponseParameter.DELAY,
                m.delay());
    }

    private static Fed loadCurve() {
        LoadCurveTestTest.Truth m = LoadCurveTestTest.PLAIN;
        return of(
                LoadCurveTestTest.MOTOR,
                LoadCurveTestTest.test("six-step current").done(),
                LoadCurveTestTest.curve(m, 6, 2e-3, new Random(16)),
                MotorParameter.FLUX_LINKAGE,
                LoadCurveTestTest.flux(m));
    }

    private static Fed event() {
        Random random = new Random(17);
        double[] first = Given.noisy(
                SharedEventTestTest.seen(1000, SharedEventTestTest.PACE, 0, SharedEventTestTest::bump), 0.05, random);
        double[] second = Given.noisy(
                SharedEventTestTest.seen(1000, SharedEventTestTest.OTHER_PACE, 0.0235, SharedEventTestTest::bump),
                0.05,
                random);
        Recording a = Given.recording("1.csv", SharedEventTestTest.PACE, Given.channel("x", "N m", first));
        Recording b = Given.recording("2.csv", SharedEventTestTest.OTHER_PACE, Given.channel("x", "V", second));
        return new Fed(
                TestKind.SHARED_EVENT,
                b,
                r -> Identification.identify(
                                Given.machine(Given.motor()),
                                List.of(SharedEventTestTest.test(1), SharedEventTestTest.test(2)),
                                Map.of("1.csv", a, "2.csv", r))
                        .tests()
                        .get(1),
                Map.of(RecorderParameter.CLOCK_OFFSET, 0.0235));
    }

    private static Fed thermistor() {
        ThermistorTestTest.Truth m = ThermistorTestTest.PLAIN;
        return of(
                Given.motor(),
                ThermistorTestTest.test().done(),
                ThermistorTestTest.calibration(m, 0.1, new Random(18)),
                ThermistorParameter.BETA,
                m.beta(),
                ThermistorParameter.RESISTANCE_AT_25,
                m.ohm());
    }

    /** From 210 mohm at switching off towards 205, 7.75 K on 5 W. */
    private static Fed heating() {
        double[] after = Given.sampled(200, 1, t -> t + 3);
        double[] ohm = Given.noisy(each(after, t -> 0.205 + 0.005 * Math.exp(-t / 60)), 2e-5, new Random(19));
        BenchTest test = Given.test(TestKind.HEATING)
                .recorded("a.csv")
                .channel("t", "after")
                .channel("r", "resistance")
                .with(TestFigure.COLD_RESISTANCE, "200 mohm")
                .with(TestFigure.WINDING_AT, "20 degC ± 0.3 K")
                .with(TestFigure.AIR_AT, "25 degC ± 0.3 K")
                .with(TestFigure.LOSS, "5 W")
                .limits("resistance", "± 0.1 %")
                .done();
        return of(
                Given.motor(),
                test,
                Given.recording("a.csv", 1, Given.channel("t", "s", after), Given.channel("r", "ohm", ohm)),
                MotorParameter.THERMAL_RESISTANCE,
                1.55);
    }
}
