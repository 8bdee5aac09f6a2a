package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Source;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.Quantity;
import servowright.engine.recording.Recording;

class InductanceStepTestTest {
    private static final Motor MOTOR = Given.motor();

    /** Gimbal motor of a lab note: 17 ohm between terminals, 1 ohm shunt, time constant 600 us; 5.4 mH per phase. */
    private static final double TAU = 600e-6;

    private static final double INTERVAL = 10e-6;

    private static Given.Test step() {
        return Given.step("inductance step hub 1").recorded("step.csv").with(TestFigure.WINDING_AT, "20 degC ± 1 K");
    }

    /** Shunt voltage of 1 A through 1 ohm, starting at 1 ms. */
    private static double[] rise(double tau) {
        return Given.sampled(1000, INTERVAL, t -> t < 1e-3 ? 0 : -Math.expm1(-(t - 1e-3) / tau));
    }

    private static Optional<Known> phaseOhm() {
        return Optional.of(
                Known.of(Quantity.of(8.5, "ohm"), 0.02, Source.of("resistance"), Origin.MEASURED, "resistance hub 1"));
    }

    private static Recording recording(String unit, double[] samples) {
        return Given.recording("step.csv", INTERVAL, Given.channel("CH1", unit, samples));
    }

    private static TestResult reduced(BenchTest test, Recording recording) {
        return InductanceStepTest.of(test, MOTOR, recording, phaseOhm()).result();
    }

    private static Known value(TestResult result, MotorParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    private static String need(TestResult result) {
        return Given.need(result.outcome(MotorParameter.PHASE_INDUCTANCE));
    }

    @Test
    void counts_the_shunt_into_the_loop() {
        double[] v = Given.noisy(rise(TAU), 0.003, new Random(1));
        TestResult result = reduced(
                step().channel("CH1", "shunt, A to B")
                        .with(TestFigure.SHUNT, "1 ohm ± 1 %")
                        .done(),
                recording("V", v));
        // 600 us times 18 ohm, halved: 5.4 mH; with 17 ohm it would come out 6 % low (recomputed).
        assertThat(value(result, MotorParameter.PHASE_INDUCTANCE).si()).isCloseTo(5.4e-3, within(0.01 * 5.4e-3));
        assertThat(result.details()).anyMatch(p -> p.template().contains("flux-linkage integral"));
    }

    @Test
    void takes_the_loop_from_a_stated_step_voltage() {
        double[] v = Given.noisy(rise(TAU), 0.003, new Random(2));
        TestResult result = reduced(
                step().channel("CH1", "shunt, A to B")
                        .with(TestFigure.SHUNT, "1 ohm ± 1 %")
                        .with(TestFigure.STEP_VOLTAGE, "18 V ± 1 %")
                        .done(),
                recording("V", v));
        assertThat(value(result, MotorParameter.PHASE_INDUCTANCE).si()).isCloseTo(5.4e-3, within(0.01 * 5.4e-3));
    }

    @Test
    void reports_a_stated_rotor_axis_as_d_or_q() {
        double[] v = Given.noisy(rise(TAU), 0.003, new Random(3));
        TestResult result = reduced(
                step().channel("CH1", "current A to BC, d axis")
                        .with(TestFigure.STEP_VOLTAGE, "18 V")
                        .done(),
                recording("A", v));
        assertThat(value(result, MotorParameter.D_INDUCTANCE).si()).isCloseTo(10.8e-3 / 1.5, within(1e-4));
        assertThat(result.values()).doesNotContainKey(MotorParameter.PHASE_INDUCTANCE);
    }

    @Test
    void averages_the_edges_of_a_square_wave_with_its_voltage() {
        // Edges every 12.5 ms, time constant 1.0079 ms as in a recorded first-order circuit.
        double tau = 1.0079e-3;
        double[] volts = Given.sampled(8192, 6.25e-6, t -> (int) (t / 12.5e-3) % 2 == 0 ? 1 : -1);
        double[] amps = new double[8192];
        double state = -1;
        for (int i = 0; i < amps.length; i++) {
            state += (volts[i] - state) * -Math.expm1(-6.25e-6 / tau);
            amps[i] = state;
        }
        Recording recording = Given.recording(
                "step.csv",
                6.25e-6,
                Given.channel("CH1", "V", volts),
                Given.channel("CH2", "A", Given.noisy(amps, 0.002, new Random(4))));
        TestResult result = reduced(
                step().channel("CH1", "A to B").channel("CH2", "current").done(), recording);
        // Loop resistance 2 V over 2 A: 1 ohm; half of 1.0079 mH per phase.
        assertThat(value(result, MotorParameter.PHASE_INDUCTANCE).si()).isCloseTo(1.0079e-3 / 2, within(2e-6));
        TestResult bare = reduced(
                step().channel("CH1", "applied").channel("CH2", "current").done(), recording);
        Known all = Given.figure(bare, "of all steps together", "tau");
        assertThat(all.si()).isCloseTo(tau, within(1e-6));
    }

    @Test
    void finds_d_and_q_from_three_pairs_of_a_meter() {
        // Ld 60 uH, Lq 75 uH at 0.3 rad: 136.1449, 147.3800, 121.4751 uH between terminals (recomputed).
        BenchTest test = Given.step("inductance step hub 2")
                .limits("inductance", "± 0.5 %")
                .reading("A to B", ReadingFigure.INDUCTANCE, "136.1449 uH")
                .reading("B to C", ReadingFigure.INDUCTANCE, "147.3800 uH")
                .reading("C to A", ReadingFigure.INDUCTANCE, "121.4751 uH")
                .done();
        IdentifiedMotor motor = Identification.identify(Given.machine(MOTOR), List.of(test), Map.of())
                .motor("hub")
                .orElseThrow();
        assertThat(motor.best(MotorParameter.D_INDUCTANCE).found().orElseThrow().si())
                .isCloseTo(60e-6, within(1e-10));
        assertThat(motor.best(MotorParameter.Q_INDUCTANCE).found().orElseThrow().si())
                .isCloseTo(75e-6, within(1e-10));
    }

    @Test
    void refuses_what_is_no_step_and_says_why() {
        assertThat(refusal("A", new double[1000])).contains("all samples are equal");
        assertThat(refusal("A", new double[] {1})).contains("enough samples");
        assertThat(refusal("V", rise(TAU))).contains("CH1 in ampere");
        assertThat(refusal("A", Given.noisy(new double[1000], 0.01, new Random(1))))
                .contains("step in");
        assertThat(refusal("A", rise(8e-3))).contains("settled current");
        assertThat(refusal("A", rise(5e-6))).contains("samples on the flank");
        double[] limited = Arrays.stream(rise(TAU)).map(a -> Math.min(a, 0.7)).toArray();
        assertThat(refusal("A", Given.noisy(limited, 1e-3, new Random(9)))).contains("exponential");
        assertThat(need(reduced(step().done(), recording("V", rise(TAU))))).contains("the current in");
        assertThat(need(reduced(step().channel("CH1", "current").done(), recording("A", rise(TAU)))))
                .contains("where the winding was contacted");
    }

    @Test
    void takes_a_falling_current_as_well() {
        double[] falling = Arrays.stream(rise(TAU)).map(a -> 2 - a).toArray();
        TestResult result = reduced(
                step().channel("CH1", "current A to B")
                        .with(TestFigure.STEP_VOLTAGE, "18 V")
                        .done(),
                recording("A", Given.noisy(falling, 0.003, new Random(7))));
        assertThat(value(result, MotorParameter.PHASE_INDUCTANCE).si()).isCloseTo(5.4e-3, within(0.01 * 5.4e-3));
    }

    private static String refusal(String unit, double[] samples) {
        return need(reduced(step().channel("CH1", "current A to B").done(), recording(unit, samples)));
    }

    @Test
    void needs_a_resistance_or_a_voltage() {
        TestResult result = InductanceStepTest.of(
                        step().channel("CH1", "current A to B").done(),
                        MOTOR,
                        recording("A", rise(TAU)),
                        Optional.empty())
                .result();
        assertThat(need(result)).contains("voltage of the step or resistance");
    }
}
