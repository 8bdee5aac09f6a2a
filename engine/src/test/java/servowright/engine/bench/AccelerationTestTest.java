package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/** Free shafts under a changing current, integrated step by step in {@link AxisLogTestTest} apart from the formulas under test. */
class AccelerationTestTest {
    private static final MotorParameter[] COUNTED = {
        MotorParameter.ROTOR_INERTIA, MotorParameter.DRY_DRAG, MotorParameter.VISCOUS_DRAG
    };

    static AxisLogTestTest.Truth drawn(Random random) {
        return new AxisLogTestTest.Truth(
                2.5e-3 * (1 + Given.within(random, 0.0001)),
                0.05,
                4e-4 * (0.9 + 0.4 * random.nextDouble()),
                0.01 * (0.7 + 0.6 * random.nextDouble()),
                2e-5 * (0.7 + 0.6 * random.nextDouble()),
                0.05,
                1 + Given.within(random, 0.0002));
    }

    private static boolean[] holds(Random random) {
        AxisLogTestTest.Truth m = drawn(random);
        Motor known = Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.01 %");
        TestResult result = Given.reduced(
                known, AxisLogTestTest.test(TestKind.ACCELERATION).done(), AxisLogTestTest.log(m, 1, random));
        double[] truth = {m.inertia(), m.dry(), m.viscous()};
        boolean[] holds = new boolean[truth.length];
        for (int j = 0; j < truth.length; j++) {
            holds[j] = Given.holds(Given.value(result, COUNTED[j]), truth[j]);
        }
        return holds;
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[COUNTED.length];
        for (int k = 0; k < 300; k++) {
            boolean[] holds = holds(new Random(9600 + k));
            for (int j = 0; j < held.length; j++) {
                held[j] += holds[j] ? 1 : 0;
            }
        }
        System.out.println("acceleration, seed 9600: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int j = 0; j < held.length; j++) {
            assertThat(held[j] / 300.0).as(COUNTED[j].words() + ", seed 9600").isBetween(0.92, 0.98);
        }
    }

    /** The torque constant by a stated inertia. */
    @Test
    void intervals_of_the_torque_constant_hold_as_often() {
        assertThat(Given.share("torque constant by acceleration", 9700, random -> {
                    AxisLogTestTest.Truth m = drawn(random);
                    double kgCm2 = 1e4 * m.inertia() * (1 + Given.within(random, 0.0001));
                    TestResult result = Given.reduced(
                            Given.motor(MotorFigure.POLE_PAIRS, "7"),
                            AxisLogTestTest.test(TestKind.ACCELERATION)
                                    .with(TestFigure.INERTIA, Given.text(kgCm2, 6, "kg cm2 ± 0.01 %"))
                                    .done(),
                            AxisLogTestTest.log(m, 1, random));
                    return Given.holds(Given.value(result, MotorParameter.FLUX_LINKAGE), m.flux());
                }))
                .isBetween(0.92, 0.98);
    }

    @Test
    void takes_no_speed_that_does_not_follow_the_current() {
        Recording log = AxisLogTestTest.log(drawn(new Random(1)), 1, new Random(2));
        double[] flat = new double[log.count()];
        double[] noise = Given.noisy(flat, 1, new Random(3));
        assertThat(need(log, noise)).contains("follows the current");
        assertThat(need(log, flat)).contains("all samples are equal");
        double[] holes = log.channels().get(0).samples().clone();
        Arrays.fill(holes, 100, 6000, Double.NaN);
        assertThat(need(log, holes)).contains("that are not");
        double[] reversed =
                Arrays.stream(log.channels().get(0).samples()).map(w -> -w).toArray();
        TestResult turned = reduced(log, reversed);
        assertThat(Given.says(turned, "opposite senses")).isTrue();
    }

    @Test
    void takes_no_other_kind_of_recording_no_cut_off_signal_and_no_single_sample() {
        Recording log = AxisLogTestTest.log(drawn(new Random(4)), 1, new Random(5));
        Channel speed = log.channels().get(0);
        Channel amp = log.channels().get(1);
        double[] cut = Arrays.stream(amp.samples()).map(i -> Math.min(i, 6)).toArray();
        assertThat(need(Given.recording("a.csv", 1e-3, speed, Given.channel("i", "A", cut))))
                .contains("run into its limit");
        double[] top = Arrays.stream(speed.samples()).map(w -> Math.min(w, 40)).toArray();
        assertThat(need(Given.recording("a.csv", 1e-3, Given.channel("w", "rad/s", top), amp)))
                .startsWith("a speed");
        assertThat(need(Given.recording("a.csv", 1e-3, speed))).contains("a current in");
        assertThat(need(Given.recording("a.csv", 1e-3, Given.channel("w", "V", speed.samples()), amp)))
                .contains("a speed in");
        double[] one = {1};
        assertThat(need(Given.recording("a.csv", 1e-3, Given.channel("w", "rad/s", one), Given.channel("i", "A", one))))
                .contains("enough samples");
    }

    private static String need(Recording recording) {
        Motor known = Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.01 %");
        return Given.need(
                Given.reduced(known, AxisLogTestTest.test(TestKind.ACCELERATION).done(), recording)
                        .outcome(MotorParameter.ROTOR_INERTIA));
    }

    private static TestResult reduced(Recording log, double[] speed) {
        return Given.reduced(
                Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.FLUX_LINKAGE, "2.5 mWb ± 0.01 %"),
                AxisLogTestTest.test(TestKind.ACCELERATION).done(),
                Given.recording(
                        "a.csv",
                        1e-3,
                        Given.channel("w", "rad/s", speed),
                        log.channels().get(1)));
    }

    private static String need(Recording log, double[] speed) {
        return Given.need(reduced(log, speed).outcome(MotorParameter.ROTOR_INERTIA));
    }
}
