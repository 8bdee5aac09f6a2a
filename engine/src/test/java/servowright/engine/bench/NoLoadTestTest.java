package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.SPEED;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** A motor with 0.02625 N m per q-axis ampere, 0.01 N m dry and 2e-5 N m s viscous drag (recomputed). */
class NoLoadTestTest {
    private static final double KT = 0.02625;
    static final Motor MOTOR = Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.001 %");

    private static Given.Test run() {
        return Given.test(TestKind.NO_LOAD).limits("current", "± 0.5 %");
    }

    static double amp(double radPerS) {
        return Math.signum(radPerS) * (0.01 + 2e-5 * Math.abs(radPerS)) / KT;
    }

    private static TestResult reduced(Given.Test test, Recording... recordings) {
        return Given.reduced(MOTOR, test.done(), recordings);
    }

    private static Given.Test readings(double offset, int... speeds) {
        Given.Test test = run();
        for (int w : speeds) {
            test.reading(
                    "",
                    SPEED,
                    Given.text(Math.abs(w), 1, "rad/s"),
                    CURRENT,
                    Given.text(amp(Math.abs(w)) + offset, 4, "A [q axis]"));
        }
        return test;
    }

    @Test
    void gives_dry_and_viscous_drag() {
        TestResult result = reduced(readings(0, 50, 100, 200, 300, 400, 500));
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.01, within(5e-5));
        assertThat(Given.value(result, MotorParameter.VISCOUS_DRAG).si()).isCloseTo(2e-5, within(2e-7));
        assertThat(Given.says(result, "both are drag")).isTrue();
        assertThat(Given.says(result, "one direction only")).isTrue();
    }

    static Recording recording(double[] speed, double[] amp) {
        return Given.recording("a.csv", 1e-2, Given.channel("n", "rad/s", speed), Given.channel("i", "A", amp));
    }

    static Given.Test recorded() {
        return run().recorded("a.csv").channel("n", "speed").channel("i", "q axis current");
    }

    /** Ten speeds forward, ten backward. */
    static double[] stairs(double most) {
        return Given.sampled(6000, 1e-2, t -> {
            int k = (int) (t / 3);
            return k < 10 ? most * (k + 1) / 10 : -most * (k - 9) / 10;
        });
    }

    @Test
    void both_directions_show_the_offset_of_the_current_sensing() {
        double[] speed = stairs(500);
        double[] amp = Arrays.stream(speed).map(w -> amp(w) + 0.15).toArray();
        TestResult result = reduced(recorded(), recording(speed, Given.noisy(amp, 0.01, new Random(1))));
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.01, within(1e-4));
        assertThat(Given.says(result, "offset")).isTrue();
        assertThat(Given.says(result, "one direction only")).isFalse();
    }

    @Test
    void tells_a_drag_that_bends_and_widens_the_result() {
        double[] speed = stairs(500);
        double[] amp = Arrays.stream(speed)
                .map(w -> amp(w) + Math.signum(w) * 1e-6 * w * w)
                .toArray();
        TestResult result = reduced(recorded(), recording(speed, Given.noisy(amp, 0.01, new Random(2))));
        assertThat(Given.says(result, "the drag bends")).isTrue();
        Known dry = Given.value(result, MotorParameter.DRY_DRAG);
        assertThat(dry.si()).isCloseTo(0.01, within(dry.expandedUncertainty()));
    }

    @Test
    void refuses_what_shows_no_drag_and_says_why() {
        Random random = new Random(3);
        double[] speed = stairs(500);
        double[] amp = Arrays.stream(speed).map(NoLoadTestTest::amp).toArray();
        double[] turned = Arrays.stream(amp).map(i -> -i).toArray();
        assertThat(need(recorded(), recording(speed, turned))).contains("brakes with the speed");
        assertThat(need(recorded(), recording(speed, Given.noisy(new double[6000], 1, random))))
                .contains("brakes with the speed");
        assertThat(need(recorded(), recording(speed, new double[6000]))).contains("all samples are equal");
        assertThat(need(recorded(), recording(Given.noisy(Given.sampled(6000, 1, t -> 300), 1, random), amp)))
                .contains("a speed that changes");
        double[] holes = amp.clone();
        Arrays.fill(holes, 100, 3100, Double.NaN);
        assertThat(need(recorded(), recording(speed, holes))).contains("that are not");
        assertThat(need(recorded(), recording(new double[] {1}, new double[] {1})))
                .contains("enough samples");
        assertThat(need(
                        run().recorded("a.csv").channel("n", "speed").channel("i", "supply current"),
                        recording(speed, amp)))
                .contains("the supply's current");
        TestResult noConstant =
                Given.reduced(Given.motor(), readings(0, 50, 100, 200, 300).done());
        assertThat(Given.need(noConstant.outcome(MotorParameter.DRY_DRAG))).contains("torque constant");
    }

    private static String need(Given.Test test, Recording... recordings) {
        return Given.need(reduced(test, recordings).outcome(MotorParameter.DRY_DRAG));
    }

    private static final double JOINT_INERTIA = 4e-4;

    /** A joint that swings to and fro and never settles; its current also accelerates it. */
    private static Recording swinging(double dry, double viscous, double zero, Random random) {
        double phase = 6.28 * random.nextDouble();
        double hum = 6.28 * random.nextDouble();
        double[] speed = Given.sampled(6000, 1e-2, t -> 80 * Math.sin(0.9 * t + phase) + 30 * Math.sin(2.3 * t));
        double[] amp = new double[6000];
        for (int i = 0; i < amp.length; i++) {
            double t = i * 1e-2;
            double slope = 72 * Math.cos(0.9 * t + phase) + 69 * Math.cos(2.3 * t);
            double torque = JOINT_INERTIA * slope + dry * Math.signum(speed[i]) + viscous * speed[i];
            amp[i] = torque / KT + zero + 0.01 * Math.sin(2 * Math.PI * 50.2 * t + hum);
        }
        double[] noisy = Given.noisy(amp, 0.05, random);
        return recording(
                Given.noisy(speed, 0.2, random),
                Arrays.stream(noisy).map(a -> 0.01 * Math.rint(a / 0.01)).toArray());
    }

    @Test
    void takes_off_the_current_that_accelerates_where_the_speed_never_settles() {
        TestResult result = reduced(recorded(), swinging(0.02, 1e-4, 0.1, new Random(4)));
        assertThat(Given.says(result, "hardly ever settles")).isTrue();
        assertThat(Given.value(result, MotorParameter.DRY_DRAG).si()).isCloseTo(0.02, within(4e-4));
        assertThat(Given.value(result, MotorParameter.VISCOUS_DRAG).si()).isCloseTo(1e-4, within(5e-6));
        assertThat(Given.figure(result, "two terms take", "m").si()).isCloseTo(JOINT_INERTIA / KT, within(3e-4));
    }

    @Test
    void intervals_of_a_swinging_joint_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[2];
        for (int k = 0; k < 300; k++) {
            Random random = new Random(5200 + k);
            double dry = 0.015 + 0.01 * random.nextDouble();
            double viscous = 1e-4 * (0.5 + random.nextDouble());
            Recording swing = swinging(dry, viscous, Given.within(random, 0.1), random);
            TestResult result = reduced(recorded().limits("current", "± 0.01 %"), swing);
            held[0] += Given.holds(Given.value(result, MotorParameter.DRY_DRAG), dry) ? 1 : 0;
            held[1] += Given.holds(Given.value(result, MotorParameter.VISCOUS_DRAG), viscous) ? 1 : 0;
        }
        System.out.println("swinging joint, seed 5200: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int count : held) {
            assertThat(count / 300.0).as("seed 5200").isBetween(0.92, 0.98);
        }
    }

    private static boolean holds(Random random, MotorParameter what) {
        double dry = 0.005 * Math.exp(random.nextDouble());
        double viscous = 2e-5 * (0.5 + random.nextDouble());
        double gain = 1 + Given.within(random, 0.005);
        double zero = Given.within(random, 0.05);
        double[] speed = stairs(300 + 300 * random.nextDouble());
        double[] amp = new double[speed.length];
        for (int i = 0; i < amp.length; i++) {
            double drag = Math.signum(speed[i]) * dry + viscous * speed[i];
            amp[i] = gain * drag / KT + zero + 0.02 * Math.sin(2 * Math.PI * 50.03 * i * 1e-2);
        }
        double[] coarse = Given.noisy(amp, 0.05, random);
        for (int i = 0; i < coarse.length; i++) {
            coarse[i] = 0.01 * Math.rint(coarse[i] / 0.01);
        }
        TestResult result = reduced(recorded(), recording(Given.noisy(speed, 0.5, random), coarse));
        return Given.holds(Given.value(result, what), what == MotorParameter.DRY_DRAG ? dry : viscous);
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(Given.share("no-load dry drag", 8400, r -> holds(r, MotorParameter.DRY_DRAG)))
                .as("dry, seed 8400")
                .isBetween(0.92, 0.98);
        assertThat(Given.share("no-load viscous drag", 8400, r -> holds(r, MotorParameter.VISCOUS_DRAG)))
                .as("viscous, seed 8400")
                .isBetween(0.92, 0.98);
    }
}
