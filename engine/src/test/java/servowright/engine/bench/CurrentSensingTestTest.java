package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/** Three sine currents a third of a turn apart, read with offsets and gains that are put in. All invented. */
class CurrentSensingTestTest {
    private static final Motor MOTOR = Given.motor();
    static final double[] OFFSET = {0.12, -0.08, 0.05};
    static final double[] GAIN = {1, 1.03, 0.98};

    static double[][] currents(double[] offset, double[] gain, double noise, Random random) {
        double start = 6.28 * random.nextDouble();
        double hertz = 7.3 + random.nextDouble();
        double[][] amp = new double[3][];
        for (int k = 0; k < 3; k++) {
            int phase = k;
            amp[k] = Given.noisy(
                    Given.sampled(
                            4000,
                            1e-3,
                            t -> offset[phase]
                                    + gain[phase] * 5 * Math.cos(2 * Math.PI * (hertz * t - phase / 3.0) + start)),
                    noise,
                    random);
        }
        return amp;
    }

    static Recording recording(double[]... amp) {
        Channel[] channels = new Channel[amp.length];
        for (int k = 0; k < amp.length; k++) {
            channels[k] = Given.channel("i" + "ABC".charAt(k), "A", amp[k]);
        }
        return Given.recording("a.csv", 1e-3, channels);
    }

    static Given.Test test(TestKind kind) {
        return Given.test(kind)
                .recorded("a.csv")
                .channel("iA", "current A")
                .channel("iB", "B to star, current")
                .channel("iC", "current W");
    }

    private static TestResult reduced(TestKind kind, double[]... amp) {
        return Given.reduced(MOTOR, test(kind).done(), recording(amp));
    }

    private static Known value(TestResult result, SensingParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    @Test
    void finds_offsets_gains_and_sum_of_three_sensors() {
        TestResult result = reduced(TestKind.CURRENT_SENSING, currents(OFFSET, GAIN, 0.01, new Random(1)));
        assertThat(value(result, SensingParameter.OFFSET_A).si()).isCloseTo(0.12, within(0.01));
        assertThat(value(result, SensingParameter.OFFSET_B).si()).isCloseTo(-0.08, within(0.01));
        assertThat(value(result, SensingParameter.OFFSET_C).si()).isCloseTo(0.05, within(0.01));
        assertThat(value(result, SensingParameter.GAIN_B).si()).isCloseTo(1.03, within(0.002));
        assertThat(value(result, SensingParameter.GAIN_C).si()).isCloseTo(0.98, within(0.002));
        assertThat(Given.says(result, "once per electrical turn")).isTrue();
        assertThat(Given.says(result, "switch of leg")).isFalse();
    }

    @Test
    void takes_two_sensors_by_their_sizes_and_says_what_that_rests_on() {
        double[][] amp = currents(OFFSET, GAIN, 0.01, new Random(2));
        TestResult result = reduced(TestKind.CURRENT_SENSING, amp[0], amp[1]);
        assertThat(value(result, SensingParameter.GAIN_B).si()).isCloseTo(1.03, within(0.01));
        assertThat(result.values()).doesNotContainKey(SensingParameter.OFFSET_C);
        assertThat(Given.says(result, "two sensors")).isTrue();
    }

    @Test
    void finds_the_zero_with_the_bridge_off_and_refuses_a_turning_motor_there() {
        double[][] still = {
            Given.noisy(Given.sampled(2000, 1e-3, t -> 0.12), 0.02, new Random(3)),
            Given.eightBit(Given.noisy(Given.sampled(2000, 1e-3, t -> -0.08), 0.03, new Random(4)), 2)
        };
        TestResult result = reduced(TestKind.CURRENT_ZERO, still);
        assertThat(value(result, SensingParameter.OFFSET_A).si()).isCloseTo(0.12, within(0.002));
        assertThat(value(result, SensingParameter.OFFSET_B).si()).isCloseTo(-0.08, within(0.004));
        TestResult turning = reduced(TestKind.CURRENT_ZERO, currents(OFFSET, GAIN, 0.01, new Random(5)));
        assertThat(Given.need(turning.outcome(SensingParameter.OFFSET_A))).contains("stand still");
    }

    /** An open upper switch of B: its phase carries no positive current, the two others close the loop. */
    @Test
    void names_a_switch_that_stays_open_and_one_that_is_shorted() {
        double[][] amp = currents(new double[3], new double[] {1, 1, 1}, 0, new Random(6));
        double[] b = Arrays.stream(amp[1]).map(i -> Math.min(i, 0)).toArray();
        double[] a = new double[b.length];
        for (int i = 0; i < b.length; i++) {
            a[i] = amp[1][i] > 0 ? -amp[2][i] : amp[0][i];
        }
        TestResult open = reduced(TestKind.CURRENT_SENSING, a, b);
        assertThat(Given.says(open, "B is never positive: upper switch of leg B stays open"))
                .isTrue();
        assertThat(Given.need(open.outcome(SensingParameter.OFFSET_A))).contains("both signs");
        double[][] shorted = {
            Given.noisy(Given.sampled(2000, 1e-3, t -> -1.6 + 0.5 * Math.sin(9 * t)), 0.02, new Random(7)),
            Given.noisy(Given.sampled(2000, 1e-3, t -> -1.8 - 0.5 * Math.sin(9 * t)), 0.02, new Random(8))
        };
        TestResult short3 = reduced(TestKind.CURRENT_SENSING, shorted);
        assertThat(Given.says(short3, "upper switch of leg C shorted")).isTrue();
    }

    private static String need(double[]... amp) {
        return Given.need(reduced(TestKind.CURRENT_SENSING, amp).outcome(SensingParameter.OFFSET_A));
    }

    @Test
    void refuses_what_shows_no_phase_currents_and_says_why() {
        double[][] amp = currents(OFFSET, GAIN, 0.01, new Random(9));
        assertThat(need(amp[0])).contains("two or three phases");
        assertThat(need(amp[0], new double[4000])).contains("all samples are equal");
        assertThat(need(new double[] {1}, new double[] {2})).contains("enough samples");
        double[] holes = amp[1].clone();
        Arrays.fill(holes, 100, 2100, Double.NaN);
        assertThat(need(amp[0], holes)).contains("that are not");
        double[] cut = Arrays.stream(amp[1]).map(i -> Math.min(i, 4)).toArray();
        assertThat(need(amp[0], cut)).contains("cut off");
        assertThat(need(amp[0], amp[0].clone())).contains("a third of a turn apart");
        double[] reversed = Arrays.stream(amp[2]).map(i -> -i).toArray();
        assertThat(need(amp[0], amp[1], reversed)).contains("add to nothing");
        Random random = new Random(10);
        assertThat(need(Given.noisy(new double[4000], 0.1, random), Given.noisy(new double[4000], 0.1, random)))
                .contains("a third of a turn apart");
        assertThat(Given.need(Given.reduced(
                                MOTOR, Given.test(TestKind.CURRENT_SENSING).done())
                        .outcome(SensingParameter.OFFSET_A)))
                .contains("a recording of the phase currents");
        double[] one = Arrays.stream(amp[0]).map(i -> 3 + 0.01 * i).toArray();
        assertThat(need(one, Arrays.stream(one).map(i -> 1 - i / 3).toArray())).contains("both signs");
    }

    @Test
    void says_when_the_samples_do_not_follow_the_electrical_turns() {
        double[][] amp = currents(OFFSET, GAIN, 0.01, new Random(11));
        TestResult stated = Given.reduced(
                Given.motor(servowright.engine.machine.MotorFigure.POLE_PAIRS, "7"),
                test(TestKind.CURRENT_SENSING)
                        .with(TestFigure.SPEED, "3000 rpm")
                        .done(),
                recording(amp));
        assertThat(Given.says(stated, "does not follow the electrical turns")).isTrue();
        assertThat(value(stated, SensingParameter.GAIN_B).si()).isCloseTo(1.03, within(0.01));
    }

    private static boolean[] holds(Random random) {
        double[] offset = {Given.within(random, 0.2), Given.within(random, 0.2), Given.within(random, 0.2)};
        double[] gain = {1, 1 + Given.within(random, 0.05), 1 + Given.within(random, 0.05)};
        double[][] amp = currents(offset, gain, 0.02 + 0.03 * random.nextDouble(), random);
        double hum = 0.01 * random.nextDouble();
        for (double[] one : amp) {
            for (int i = 0; i < one.length; i++) {
                one[i] = 0.01 * Math.rint(100 * (one[i] + hum * Math.sin(2 * Math.PI * 50.03e-3 * i)));
            }
        }
        TestResult result = reduced(TestKind.CURRENT_SENSING, amp);
        return new boolean[] {
            Given.holds(value(result, SensingParameter.OFFSET_B), offset[1]),
            Given.holds(value(result, SensingParameter.GAIN_B), gain[1])
        };
    }

    @Test
    void intervals_cover() {
        assertThat(Given.share("current offset", 8300, r -> holds(r)[0])).isBetween(0.92, 0.98);
        assertThat(Given.share("current gain", 8300, r -> holds(r)[1])).isBetween(0.92, 0.98);
    }
}
