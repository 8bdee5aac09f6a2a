package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** 9 slots with 8 magnets cog lcm(9, 8) = 72 times per turn (symmetry); 0.05 N m/A. All invented. */
class CoggingTestTest {
    private static final double KT = 0.05;
    static final Motor MOTOR = Given.motor(
            MotorFigure.POLE_PAIRS, "4",
            MotorFigure.SLOTS, "9",
            MotorFigure.TORQUE_CONSTANT, "0.05 N m/A ± 0.1 % [q axis]");
    private static final int EACH_WAY = 1440;

    /** Once around and back, the current that the position asks for plus friction in the sense of rotation. */
    static Recording around(DoubleUnaryOperator amp, double friction, double noise, Random random) {
        double[] angle = new double[2 * EACH_WAY];
        double[] current = new double[angle.length];
        for (int i = 0; i < angle.length; i++) {
            int sense = i < EACH_WAY ? 1 : -1;
            double at = 2 * Math.PI * (i < EACH_WAY ? i : 2 * EACH_WAY - i) / EACH_WAY;
            angle[i] = Math.rint(at * 20_000 / (2 * Math.PI)) * 2 * Math.PI / 20_000;
            current[i] = amp.applyAsDouble(at) + sense * friction + noise * random.nextGaussian();
        }
        return recording(angle, current);
    }

    private static Recording recording(double[] angle, double[] current) {
        return Given.recording("a.csv", 0.05, Given.channel("x", "rad", angle), Given.channel("i", "A", current));
    }

    static Given.Test test(TestKind kind) {
        return Given.test(kind)
                .recorded("a.csv")
                .channel("x", "angle")
                .channel("i", "q axis current")
                .limits("current", "± 1 %");
    }

    static double cogging(double at) {
        return 0.2 * Math.cos(72 * at + 0.4) + 0.03 * Math.cos(4 * at) + 0.02 * Math.sin(9 * at);
    }

    @Test
    void finds_cogging_its_orders_and_the_friction() {
        Recording run = around(CoggingTestTest::cogging, 0.06, 0.01, new Random(1));
        TestResult result = Given.reduced(MOTOR, test(TestKind.COGGING_RUN).done(), run);
        // The three waves together range over nearly 2 (0.2 + 0.03 + 0.02) A.
        double range = range(CoggingTestTest::cogging);
        assertThat(Given.value(result, MotorParameter.COGGING_TORQUE).si()).isCloseTo(KT * range, within(2e-4));
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(KT * 0.06, within(2e-5));
        assertThat(result.details()).anyMatch(p -> p.template().contains("slots and magnets: cogging"));
        assertThat(result.details()).anyMatch(p -> p.template().contains("offset of a current sensor"));
        assertThat(result.details()).anyMatch(p -> p.template().contains("magnets that are not alike"));
        assertThat(result.curves()).hasSize(3);
    }

    static double range(DoubleUnaryOperator amp) {
        double[] all = Given.sampled(72_000, 2 * Math.PI / 72_000, amp);
        return Arrays.stream(all).max().orElseThrow() - Arrays.stream(all).min().orElseThrow();
    }

    @Test
    void takes_half_the_difference_at_rest_as_the_least_friction_only() {
        Recording held = around(CoggingTestTest::cogging, 0.06, 0.01, new Random(2));
        TestResult result = Given.reduced(MOTOR, test(TestKind.HOLD_MAP).done(), held);
        assertThat(result.values()).doesNotContainKey(MotorParameter.DRY_DRAG);
        assertThat(Given.says(result, "the least it can be")).isTrue();
    }

    @Test
    void says_when_current_and_angle_are_counted_in_opposite_senses() {
        Recording run = around(CoggingTestTest::cogging, -0.06, 0.01, new Random(3));
        TestResult result = Given.reduced(MOTOR, test(TestKind.COGGING_RUN).done(), run);
        assertThat(Given.says(result, "counted against the angle")).isTrue();
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(KT * 0.06, within(2e-5));
    }

    @Test
    void names_slots_and_poles_that_do_not_fit_what_was_seen() {
        Recording run = around(t -> 0.2 * Math.cos(60 * t), 0.06, 0.01, new Random(4));
        assertThat(Given.says(Given.reduced(MOTOR, test(TestKind.COGGING_RUN).done(), run), "does not stand out"))
                .isTrue();
        TestResult open = Given.reduced(Given.motor(), test(TestKind.HOLD_MAP).done(), run);
        // 60 = lcm(12, 10): 12 slots with 10 magnets.
        assertThat(Given.says(open, "would be the cogging of")).isTrue();
    }

    private static String need(Given.Test test, Recording... recordings) {
        return Given.need(Given.reduced(MOTOR, test.done(), recordings).outcome(MotorParameter.COGGING_TORQUE));
    }

    @Test
    void refuses_what_shows_no_cogging_and_says_why() {
        Random random = new Random(5);
        Given.Test run = test(TestKind.COGGING_RUN);
        Recording good = around(CoggingTestTest::cogging, 0.06, 0.01, random);
        double[] angle = good.channels().get(0).samples();
        double[] current = good.channels().get(1).samples();
        assertThat(need(run)).contains("the recording a.csv");
        assertThat(need(run, recording(angle, new double[angle.length]))).contains("all samples are equal");
        assertThat(need(run, recording(new double[] {1}, new double[] {1}))).contains("enough samples");
        double[] holes = current.clone();
        Arrays.fill(holes, 100, 1500, Double.NaN);
        assertThat(need(run, recording(angle, holes))).contains("that are not");
        double[] part = Arrays.stream(angle).map(a -> a / 3).toArray();
        assertThat(need(run, recording(part, current))).contains("covers 120 deg");
        double[] cut = Arrays.stream(current).map(i -> Math.min(i, 0.18)).toArray();
        assertThat(need(run, recording(angle, cut))).contains("cut off");
        assertThat(need(
                        Given.test(TestKind.COGGING_RUN)
                                .recorded("a.csv")
                                .channel("i", "supply current")
                                .channel("x", "angle"),
                        good))
                .contains("the supply's current");
        assertThat(need(test(TestKind.HOLD_MAP).channel("x", "speed"), good)).contains("an angle in");
        Recording fast =
                Given.recording("a.csv", 1e-4, Given.channel("x", "rad", angle), Given.channel("i", "A", current));
        assertThat(need(run, fast)).contains("carries it over");
    }

    @Test
    void finds_no_order_in_noise_and_keeps_the_turns_of_a_wrapping_angle() {
        Recording noise = around(t -> 0, 0.06, 0.01, new Random(6));
        TestResult nothing = Given.reduced(MOTOR, test(TestKind.HOLD_MAP).done(), noise);
        assertThat(Given.says(nothing, "no order stands out")).isTrue();
        Recording good = around(CoggingTestTest::cogging, 0.06, 0.01, new Random(7));
        double[] wrapped = Arrays.stream(good.channels().get(0).samples())
                .map(a -> (a + 1) % (2 * Math.PI))
                .toArray();
        TestResult result = Given.reduced(
                MOTOR,
                test(TestKind.COGGING_RUN).done(),
                recording(wrapped, good.channels().get(1).samples()));
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(KT * 0.06, within(2e-5));
    }

    /** Gain of the current sensing, noise, hum, an encoder of 20000 counts, friction that grows over the run. */
    private static TestResult drawn(Random random, double friction, DoubleUnaryOperator cogging) {
        double gain = 1 + Given.within(random, 0.01);
        double offset = Given.within(random, 0.05);
        Recording run = around(
                t -> gain * (cogging.applyAsDouble(t) + offset),
                gain * friction,
                0.05 + 0.05 * random.nextDouble(),
                random);
        double hum = 0.01 * random.nextDouble();
        double[] current = run.channels().get(1).samples();
        for (int i = 0; i < current.length; i++) {
            current[i] += hum * Math.sin(2 * Math.PI * 50.02 * 0.0507 * i);
        }
        return Given.reduced(MOTOR, test(TestKind.COGGING_RUN).done(), run);
    }

    private static boolean[] holds(Random random) {
        double a = 0.1 + 0.2 * random.nextDouble();
        double b = 0.05 * random.nextDouble();
        double phase = 6.28 * random.nextDouble();
        double friction = 0.02 + 0.1 * random.nextDouble();
        double kt = 1 + Given.within(random, 0.001);
        DoubleUnaryOperator cogging =
                t -> a * Math.cos(72 * t + phase) + b * Math.sin(144 * t) + 0.03 * Math.cos(4 * t);
        TestResult result = drawn(random, friction, cogging);
        return new boolean[] {
            Given.holds(Given.value(result, MotorParameter.COGGING_TORQUE), KT * kt * range(cogging)),
            Given.holds(Given.value(result, MotorParameter.DRY_DRAG), KT * kt * friction)
        };
    }

    @Test
    void intervals_cover() {
        int[] held = new int[2];
        for (int draw = 0; draw < 300; draw++) {
            boolean[] both = holds(new Random(8200 + draw));
            held[0] += both[0] ? 1 : 0;
            held[1] += both[1] ? 1 : 0;
        }
        System.out.printf("seed 8200: cogging torque %d, friction %d of 300%n", held[0], held[1]);
        assertThat(held[0] / 300.0).as("cogging torque, seed 8200").isBetween(0.92, 0.98);
        assertThat(held[1] / 300.0).as("friction, seed 8200").isBetween(0.92, 0.98);
    }
}
