package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;

/**
 * Motors of 7 pole pairs with a changing current on a free shaft. The speed is integrated here in steps of 0.2 ms from J dω/dt =
 * Kt i − Tc sgn ω − b ω, apart from the formulas under test.
 */
class AxisLogTestTest {
    private static final Motor MOTOR = Given.motor(MotorFigure.POLE_PAIRS, "7");
    private static final double STEP = 1e-3;
    private static final int COUNT = 12_000;

    /** A motor and the error of the drive's sensing. */
    record Truth(double flux, double ohm, double inertia, double dry, double viscous, double dead, double gainI) {
        double kt() {
            return 1.5 * 7 * flux;
        }
    }

    static final Truth PLAIN = new Truth(2.5e-3, 0.05, 4e-4, 0.01, 2e-5, 0.05, 1);

    private static double current(double t) {
        return 8 * Math.sin(2 * Math.PI * 0.45 * t) + 5 * Math.sin(2 * Math.PI * 1.3 * t + 1);
    }

    private static double[] speeds(Truth m) {
        double[] speeds = new double[COUNT];
        double w = 20;
        for (int k = 0; k < COUNT; k++) {
            speeds[k] = w;
            for (int s = 0; s < 5; s++) {
                double t = k * STEP + s * STEP / 5;
                double torque = m.kt() * current(t) - m.viscous() * w - m.dry() * Math.signum(w);
                w += torque / m.inertia() * STEP / 5;
            }
        }
        return speeds;
    }

    static Recording log(Truth m, double noise, Random random) {
        double[] speed = speeds(m);
        double[] amp = Given.sampled(COUNT, STEP, AxisLogTestTest::current);
        double[] volt = new double[COUNT];
        for (int k = 0; k < COUNT; k++) {
            volt[k] = m.ohm() * amp[k] + 7 * m.flux() * speed[k] + m.dead() * Math.signum(amp[k]) + 0.003;
            amp[k] *= m.gainI();
        }
        return recording(
                Given.noisy(speed, noise, random),
                Given.noisy(amp, 0.05 * noise, random),
                Given.noisy(volt, 0.02 * noise, random));
    }

    private static Recording recording(double[] speed, double[] amp, double[] volt) {
        return Given.recording(
                "a.csv",
                STEP,
                Given.channel("w", "rad/s", speed),
                Given.channel("i", "A", amp),
                Given.channel("u", "V", volt));
    }

    static Given.Test test(TestKind kind) {
        return Given.test(kind)
                .recorded("a.csv")
                .channel("w", "speed")
                .channel("i", "q axis current")
                .channel("u", "q axis voltage")
                .with(TestFigure.WINDING_AT, "20 degC ± 0.1 K")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 0.01 K")
                .limits("current", "± 0.02 %")
                .limits("voltage", "± 0.02 %");
    }

    private static TestResult reduced(Given.Test test, Recording recording) {
        return Given.reduced(MOTOR, test.done(), recording);
    }

    @Test
    void finds_the_motor_in_its_log() {
        TestResult result = reduced(test(TestKind.AXIS_LOG), log(PLAIN, 0.5, new Random(1)));
        close(result, MotorParameter.PHASE_RESISTANCE, 0.05, 0.005);
        close(result, MotorParameter.FLUX_LINKAGE, 2.5e-3, 0.002);
        close(result, MotorParameter.ROTOR_INERTIA, 4e-4, 0.01);
        close(result, MotorParameter.DRY_DRAG, 0.01, 0.05);
        close(result, MotorParameter.VISCOUS_DRAG, 2e-5, 0.2);
        assertThat(Given.says(result, "dead zone")).isTrue();
    }

    private static void close(TestResult result, MotorParameter what, double truth, double relative) {
        assertThat(Given.value(result, what).si()).as(what.words()).isCloseTo(truth, within(relative * truth));
    }

    @Test
    void finds_the_torque_constant_when_the_inertia_is_stated_and_the_inertia_when_it_is_not() {
        Recording log = log(PLAIN, 0.5, new Random(2));
        TestResult constant = reduced(test(TestKind.ACCELERATION).with(TestFigure.INERTIA, "4.0 kg cm2 ± 0.5 %"), log);
        close(constant, MotorParameter.FLUX_LINKAGE, 2.5e-3, 0.005);
        Motor known = Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.1 %");
        TestResult inertia = Given.reduced(
                known,
                test(TestKind.ACCELERATION)
                        .with(TestFigure.ADDED_INERTIA, "1 kg cm2")
                        .done(),
                log);
        close(inertia, MotorParameter.ROTOR_INERTIA, 3e-4, 0.02);
        close(inertia, MotorParameter.DRY_DRAG, 0.01, 0.05);
        TestResult neither = reduced(test(TestKind.ACCELERATION), log);
        assertThat(Given.need(neither.outcome(MotorParameter.ROTOR_INERTIA)))
                .contains("torque constant, or the inertia");
    }

    @Test
    void uses_the_time_stamps_and_reports_gaps() {
        Recording even = log(PLAIN, 0.5, new Random(3));
        double[] stamps = new double[COUNT];
        for (int k = 0; k < COUNT; k++) {
            stamps[k] = k * STEP + (k > 6000 ? 0.02 : 0);
        }
        Recording gap = new Recording("a.csv", "0", Clock.stamped(stamps), even.channels(), List.of());
        TestResult result = reduced(test(TestKind.AXIS_LOG), gap);
        assertThat(Given.says(result, "the time stamps were used")).isTrue();
        close(result, MotorParameter.ROTOR_INERTIA, 4e-4, 0.01);
    }

    @Test
    void refuses_what_carries_no_answer_and_says_why() {
        Random random = new Random(4);
        Recording good = log(PLAIN, 0.5, random);
        double[] speed = good.channels().get(0).samples();
        double[] amp = good.channels().get(1).samples();
        double[] volt = good.channels().get(2).samples();
        assertThat(need(recording(speed, amp, new double[COUNT]))).contains("all samples are equal");
        assertThat(need(recording(speed, Given.noisy(new double[COUNT], 1, random), volt)))
                .contains("follows the current");
        assertThat(need(recording(Given.noisy(new double[COUNT], 1, random), amp, volt)))
                .contains("follows the current");
        assertThat(need(recording(speed, amp, Given.noisy(new double[COUNT], 1, random))))
                .contains("follows current and speed");
        double[] holes = speed.clone();
        Arrays.fill(holes, 100, 7000, Double.NaN);
        assertThat(need(recording(holes, amp, volt))).contains("that are not");
        assertThat(need(recording(new double[] {1}, new double[] {1}, new double[] {1})))
                .contains("enough samples");
        double[] cut = Arrays.stream(amp).map(i -> Math.min(i, 6)).toArray();
        assertThat(need(recording(speed, cut, volt))).contains("run into its limit");
        TestResult supply = reduced(test(TestKind.ACCELERATION).channel("i", "supply current"), good);
        assertThat(Given.need(supply.outcome(MotorParameter.ROTOR_INERTIA))).contains("the supply's current");
    }

    @Test
    void says_when_current_and_speed_are_counted_in_opposite_senses() {
        Recording good = log(PLAIN, 0.5, new Random(5));
        double[] turned =
                Arrays.stream(good.channels().get(1).samples()).map(i -> -i).toArray();
        Motor known = Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.1 %");
        TestResult result = Given.reduced(
                known,
                test(TestKind.ACCELERATION).done(),
                recording(good.channels().get(0).samples(), turned, new double[COUNT]));
        assertThat(Given.says(result, "opposite senses")).isTrue();
        close(result, MotorParameter.ROTOR_INERTIA, 4e-4, 0.01);
    }

    private static String need(Recording recording) {
        return Given.need(reduced(test(TestKind.AXIS_LOG), recording).outcome(MotorParameter.PHASE_RESISTANCE));
    }

    private static final MotorParameter[] COUNTED = {
        MotorParameter.PHASE_RESISTANCE,
        MotorParameter.FLUX_LINKAGE,
        MotorParameter.ROTOR_INERTIA,
        MotorParameter.DRY_DRAG,
        MotorParameter.VISCOUS_DRAG
    };

    /** Which intervals hold, in the order above. */
    private static boolean[] holds(Random random) {
        Truth m = new Truth(
                2.5e-3 * (0.7 + 0.6 * random.nextDouble()),
                0.05 * (0.7 + 0.6 * random.nextDouble()),
                4e-4 * (0.9 + 0.4 * random.nextDouble()),
                0.01 * (0.7 + 0.6 * random.nextDouble()),
                2e-5 * (0.7 + 0.6 * random.nextDouble()),
                0.05,
                1 + Given.within(random, 0.0002));
        double gainU = 1 + Given.within(random, 0.0002);
        Recording log = log(m, 1, random);
        double[] volt = log.channels().get(2).samples();
        for (int k = 0; k < COUNT; k++) {
            volt[k] = 0.01 * Math.rint((gainU * volt[k] + 0.01 * Math.sin(2 * Math.PI * 50.1 * k * STEP)) / 0.01);
        }
        double[] truth = {m.ohm(), m.flux(), m.inertia(), m.dry(), m.viscous()};
        TestResult result = reduced(test(TestKind.AXIS_LOG), log);
        boolean[] holds = new boolean[truth.length];
        for (int j = 0; j < truth.length; j++) {
            Known found = Given.value(result, COUNTED[j]);
            holds[j] = Given.holds(found, truth[j]);
        }
        return holds;
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[COUNTED.length];
        for (int k = 0; k < 300; k++) {
            boolean[] holds = holds(new Random(9000 + k));
            for (int j = 0; j < held.length; j++) {
                held[j] += holds[j] ? 1 : 0;
            }
        }
        System.out.println("axis log, seed 9000: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int j = 0; j < held.length; j++) {
            assertThat(held[j] / 300.0).as(COUNTED[j].words() + ", seed 9000").isBetween(0.92, 0.98);
        }
    }
}
