package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** A sine-cosine sensor turned by hand once and a third around; its channels are written out here. */
class ChannelTurnTestTest {
    private static final int ROWS = 600;
    private static final Map<String, String> CHANNELS = Map.of("c", "cosine", "s", "sine");

    /** What the channels have wrong: centre and amplitudes in volts, degrees by which the sine leads. */
    private record Truth(double x0, double y0, double a, double b, double lead) {
        double offset() {
            return Math.hypot(x0 / a, y0 / b);
        }

        double[] cosine(double turns) {
            return Given.sampled(ROWS, turns / ROWS, t -> x0 + a * Math.cos(2 * Math.PI * t));
        }

        double[] sine(double turns) {
            return Given.sampled(ROWS, turns / ROWS, t -> y0 + b * Math.sin(2 * Math.PI * t + Math.toRadians(lead)));
        }
    }

    private static final Truth PLAIN = new Truth(0.05, -0.02, 1.03, 1.00, 1.5);

    private static Recording recording(double[] cosine, double[] sine) {
        return Given.recording("a.csv", 0.01, Given.channel("c", "V", cosine), Given.channel("s", "V", sine));
    }

    private static TestResult reduced(Recording recording) {
        return new OnAxis()
                .recorded(TestKind.CHANNEL_TURN, recording, CHANNELS)
                .identified()
                .tests()
                .get(0);
    }

    private static Known value(TestResult result, AxisParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    private static Recording noisy(Truth truth, Random random) {
        return recording(Given.noisy(truth.cosine(1.33), 0.003, random), Given.noisy(truth.sine(1.33), 0.003, random));
    }

    @Test
    void finds_offset_gain_and_quadrature() {
        TestResult result = reduced(noisy(PLAIN, new Random(1)));
        assertThat(value(result, AxisParameter.CHANNEL_OFFSET).si()).isCloseTo(PLAIN.offset(), within(0.002));
        assertThat(value(result, AxisParameter.CHANNEL_GAIN).si()).isCloseTo(0.03, within(0.002));
        assertThat(OnAxis.degrees(value(result, AxisParameter.CHANNEL_QUADRATURE)))
                .isCloseTo(1.5, within(0.05));
    }

    /**
     * Alone, an offset o of a circle errs by asin(o), a gain g by atan(g/(2 √(1 + g))), the largest distance of atan(k tan θ) from θ
     * (derived).
     */
    @Test
    void says_what_it_costs_to_take_nothing_off() {
        TestResult off = reduced(noisy(new Truth(0.1, 0, 1, 1, 0), new Random(2)));
        assertThat(cost(off)).isCloseTo(Math.toDegrees(Math.asin(0.1)), within(0.1));
        TestResult gain = reduced(noisy(new Truth(0, 0, 1.1, 1, 0), new Random(3)));
        assertThat(cost(gain)).isCloseTo(Math.toDegrees(Math.atan(0.1 / (2 * Math.sqrt(1.1)))), within(0.1));
        TestResult lost = reduced(noisy(new Truth(1.2, 0, 1, 1, 0), new Random(4)));
        assertThat(Given.says(lost, "does not even go round")).isTrue();
        assertThat(value(lost, AxisParameter.CHANNEL_OFFSET).si()).isCloseTo(1.2, within(0.01));
    }

    private static double cost(TestResult result) {
        return Math.toDegrees(
                Given.figure(result, "with nothing taken off", "worst").si());
    }

    @Test
    void refuses_what_draws_no_whole_ellipse_and_says_why() {
        Random random = new Random(5);
        double[] c = Given.noisy(PLAIN.cosine(1.33), 0.003, random);
        double[] s = Given.noisy(PLAIN.sine(1.33), 0.003, random);
        assertThat(need(recording(c, c))).contains("draw an ellipse");
        assertThat(need(recording(new double[ROWS], s))).contains("draw an ellipse");
        double[] noise = Given.noisy(new double[ROWS], 1, random);
        assertThat(need(recording(noise, s))).contains("draw an ellipse");
        assertThat(need(noisyPart(0.6, random))).contains("a whole turn");
        double[] cut = Arrays.stream(PLAIN.cosine(6)).map(v -> Math.min(0.7, v)).toArray();
        assertThat(need(recording(cut, PLAIN.sine(6)))).isNotEqualTo("nothing");
        double[] holes = c.clone();
        Arrays.fill(holes, 10, ROWS, Double.NaN);
        assertThat(need(recording(holes, s))).contains("it has 10");
        assertThat(need(recording(new double[] {1}, new double[] {0}))).contains("it has 1");
        Recording wrong = Given.recording("a.csv", 0.01, Given.channel("n", "rad/s", c));
        assertThat(need(wrong)).contains("show cosine and sine");
    }

    private static Recording noisyPart(double turns, Random random) {
        return recording(
                Given.noisy(PLAIN.cosine(turns), 0.003, random), Given.noisy(PLAIN.sine(turns), 0.003, random));
    }

    private static String need(Recording recording) {
        return OnAxis.need(reduced(recording).outcome(AxisParameter.CHANNEL_OFFSET));
    }

    /** A channel the other way round: the angle counts backwards, what is wrong with it stays. */
    @Test
    void takes_a_sine_of_the_other_sign() {
        double[] back = Arrays.stream(PLAIN.sine(1.33)).map(v -> -v).toArray();
        TestResult result = reduced(recording(PLAIN.cosine(1.33), back));
        assertThat(value(result, AxisParameter.CHANNEL_OFFSET).si()).isCloseTo(PLAIN.offset(), within(1e-6));
        assertThat(value(result, AxisParameter.CHANNEL_GAIN).si()).isCloseTo(0.03, within(1e-6));
        assertThat(OnAxis.degrees(value(result, AxisParameter.CHANNEL_QUADRATURE)))
                .isCloseTo(-1.5, within(1e-4));
    }

    /** Noise of both, a little that wanders, hum, steps of the converter, turns of a hand that is not even. */
    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[3];
        for (int k = 0; k < 300; k++) {
            Random random = new Random(9700 + k);
            Truth truth = new Truth(
                    Given.within(random, 0.1),
                    Given.within(random, 0.1),
                    1 + Given.within(random, 0.1),
                    1 + Given.within(random, 0.1),
                    Given.within(random, 5));
            TestResult result = reduced(drawn(truth, random));
            held[0] += Given.holds(value(result, AxisParameter.CHANNEL_OFFSET), truth.offset()) ? 1 : 0;
            held[1] += Given.holds(value(result, AxisParameter.CHANNEL_GAIN), truth.a / truth.b - 1) ? 1 : 0;
            held[2] += Given.holds(value(result, AxisParameter.CHANNEL_QUADRATURE), Math.toRadians(truth.lead)) ? 1 : 0;
        }
        System.out.println("channel turn, seed 9700: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int n : held) {
            assertThat(n).as("seed 9700").isBetween(276, 294);
        }
    }

    private static Recording drawn(Truth truth, Random random) {
        double[] c = new double[ROWS];
        double[] s = new double[ROWS];
        double turns = 1.1 + random.nextDouble();
        double uneven = 0.05 * random.nextDouble();
        double wanders = 0;
        for (int k = 0; k < ROWS; k++) {
            double t = turns * k / ROWS;
            double a = 2 * Math.PI * (t + uneven * Math.sin(7 * t));
            wanders = 0.9 * wanders + 0.001 * random.nextGaussian();
            double hum = 0.001 * Math.sin(2 * Math.PI * 50.03 * 0.01 * k);
            c[k] = 1e-3 * Math.rint(1e3 * (truth.x0 + truth.a * Math.cos(a) + hum + 0.003 * random.nextGaussian()));
            s[k] = 1e-3
                    * Math.rint(1e3
                            * (truth.y0
                                    + truth.b * Math.sin(a + Math.toRadians(truth.lead))
                                    + wanders
                                    + 0.003 * random.nextGaussian()));
        }
        return recording(c, s);
    }
}
