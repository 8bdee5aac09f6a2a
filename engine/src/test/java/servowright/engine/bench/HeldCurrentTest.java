package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/**
 * A current that stands still at ±6 A, logged as the controller set it: held there, or cut off. The speed is integrated here in steps of 0.2
 * ms from J dω/dt = Kt i − Tc sgn ω − b ω.
 */
class HeldCurrentTest {
    private static final int COUNT = 12_000;
    private static final double KT = 1.5 * 7 * 2.5e-3;
    private static final Motor MOTOR =
            Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.1 %");

    private static double asked(double t) {
        return 8 * Math.sin(2 * Math.PI * 0.45 * t) + 5 * Math.sin(2 * Math.PI * 1.3 * t + 1);
    }

    private static double held(double t) {
        return Math.max(-6, Math.min(6, asked(t)));
    }

    private static double[] speeds(DoubleUnaryOperator amp) {
        double[] speeds = new double[COUNT];
        double w = 20;
        for (int k = 0; k < COUNT; k++) {
            speeds[k] = w;
            for (int s = 0; s < 5; s++) {
                double t = (k + s / 5.0) * 1e-3;
                w += (KT * amp.applyAsDouble(t) - 2e-5 * w - 0.01 * Math.signum(w)) / 4e-4 * 2e-4;
            }
        }
        return speeds;
    }

    /** What is logged flickers where the controller acts, and stands still at its limit. */
    private static Recording log(DoubleUnaryOperator truly, long seed) {
        Random random = new Random(seed);
        double[] amp = Given.noisy(Given.sampled(COUNT, 1e-3, HeldCurrentTest::asked), 0.03, random);
        return Given.recording(
                "a.csv",
                1e-3,
                Given.channel("w", "rad/s", Given.noisy(speeds(truly), 0.5, random)),
                Given.channel(
                        "i",
                        "A",
                        Arrays.stream(amp)
                                .map(i -> Math.max(-6, Math.min(6, i)))
                                .toArray()));
    }

    private static TestResult reduced(Recording log) {
        return Given.reduced(MOTOR, AxisLogTestTest.test(TestKind.ACCELERATION).done(), log);
    }

    @Test
    void takes_a_current_that_was_held_at_its_limit() {
        for (long seed = 1; seed <= 5; seed++) {
            TestResult result = reduced(log(HeldCurrentTest::held, seed));
            assertThat(Given.says(result, "it was held there"))
                    .as("seed %s", seed)
                    .isTrue();
            assertThat(Given.holds(Given.value(result, MotorParameter.ROTOR_INERTIA), 4e-4))
                    .as("seed %s", seed)
                    .isTrue();
        }
    }

    @Test
    void refuses_one_that_was_cut_off_there() {
        for (long seed = 1; seed <= 5; seed++) {
            TestResult result = reduced(log(HeldCurrentTest::asked, seed));
            assertThat(Given.need(result.outcome(MotorParameter.ROTOR_INERTIA)))
                    .as("seed %s", seed)
                    .contains("is cut off");
        }
    }

    /** Noise on the current only at first: too little moves freely to judge the rest. */
    @Test
    void flags_one_that_is_hardly_ever_free() {
        DoubleUnaryOperator bang = t -> 6 * Math.signum(asked(t)) * (t < 0.3 ? Math.abs(Math.sin(90 * t)) : 1);
        double[] amp = Given.noisy(Given.sampled(COUNT, 1e-3, bang), 0.01, new Random(7));
        double[] cut =
                Arrays.stream(amp).map(i -> Math.max(-5.9, Math.min(5.9, i))).toArray();
        double[] speed = Given.noisy(speeds(bang), 0.5, new Random(8));
        Recording log =
                Given.recording("a.csv", 1e-3, Given.channel("w", "rad/s", speed), Given.channel("i", "A", cut));
        assertThat(Given.says(reduced(log), "is cut off")).isTrue();
    }

    /** Two levels are a command, whatever their share. */
    @Test
    void takes_a_current_that_is_commanded_back_and_forth() {
        DoubleUnaryOperator bang = t -> 6 * Math.signum(asked(t));
        double[] speed = Given.noisy(speeds(bang), 0.5, new Random(9));
        Recording log = Given.recording(
                "a.csv",
                1e-3,
                Given.channel("w", "rad/s", speed),
                Given.channel("i", "A", Given.sampled(COUNT, 1e-3, bang)));
        assertThat(Given.holds(Given.value(reduced(log), MotorParameter.ROTOR_INERTIA), 4e-4))
                .isTrue();
    }
}
