package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/**
 * Sines, steps and sweeps through a first-order lag that is stepped here in fiftieths of a sample by Euler's rule, apart from the exact
 * solution under test.
 */
class ResponseTestTest {
    private static final Motor MOTOR = Given.motor();
    private static final double STEP = 2e-3;
    private static final int COUNT = 3000;
    private static final int FINE = 50;

    /** What answers. */
    record Truth(double gain, double tau, double delay) {}

    static final Truth PLAIN = new Truth(250, 0.1, 9.4e-3);

    /** Steps of both signs, then random steps, then a sweep. */
    static double[] excitation(Random random) {
        double[] u = new double[COUNT];
        double level = 0;
        for (int k = 0; k < COUNT; k++) {
            if (k < COUNT / 3) {
                level = (k / 170) % 2 == 0 ? 0.5 : -0.4;
            } else if (k % 60 == 0) {
                level = 1.5 * random.nextDouble() - 0.75;
            }
            double s = (k - 2.0 * COUNT / 3) * STEP;
            u[k] = s < 0 ? level : 0.6 * Math.sin(2 * Math.PI * (0.5 * s + s * s));
        }
        return u;
    }

    static double[] answer(Truth truth, double[] input) {
        double[] y = new double[input.length];
        double h = STEP / FINE;
        int late = (int) Math.round(truth.delay() / h);
        double state = 0;
        for (int k = 0; k < input.length; k++) {
            y[k] = state;
            for (int s = 0; s < FINE; s++) {
                int at = k * FINE + s - late;
                double u = at < 0 ? input[0] : input[at / FINE];
                state += h / truth.tau() * (truth.gain() * u - state);
            }
        }
        return y;
    }

    static Recording recording(double[] in, double[] out) {
        return Given.recording("a.csv", STEP, Given.channel("u", "", in), Given.channel("y", "rad/s", out));
    }

    static BenchTest run() {
        return Given.test(TestKind.RESPONSE_RUN)
                .recorded("a.csv")
                .channel("u", "input")
                .channel("y", "output, speed")
                .done();
    }

    private static TestResult reduced(double[] in, double[] out) {
        return Given.reduced(MOTOR, run(), recording(in, out));
    }

    private static Known value(TestResult result, ResponseParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    @Test
    void finds_gain_time_constant_and_delay_of_all_excitations_at_once() {
        Random random = new Random(1);
        double[] in = excitation(random);
        TestResult result = reduced(in, Given.noisy(answer(PLAIN, in), 2, random));
        assertThat(value(result, ResponseParameter.GAIN).si()).isCloseTo(250, within(0.5));
        assertThat(value(result, ResponseParameter.TIME_CONSTANT).si()).isCloseTo(0.1, within(5e-4));
        assertThat(value(result, ResponseParameter.DELAY).si()).isCloseTo(9.4e-3, within(4e-4));
        assertThat(Given.figure(result, "explains", "share").si()).isGreaterThan(0.97);
        assertThat(Given.says(result, "depends on how large")).isFalse();
        assertThat(result.curves()).hasSize(3);
    }

    @Test
    void says_when_the_gain_depends_on_the_size_or_is_negative() {
        Random random = new Random(2);
        double[] in = excitation(random);
        double[] dead = Arrays.stream(answer(PLAIN, in))
                .map(w -> Math.signum(w) * Math.max(0, Math.abs(w) - 30))
                .toArray();
        assertThat(Given.says(reduced(in, Given.noisy(dead, 2, random)), "depends on how large"))
                .isTrue();
        double[] reversed = Arrays.stream(answer(PLAIN, in)).map(w -> -w).toArray();
        TestResult result = reduced(in, Given.noisy(reversed, 2, random));
        assertThat(value(result, ResponseParameter.GAIN).si()).isCloseTo(-250, within(0.5));
        assertThat(Given.says(result, "output falls when the input rises")).isTrue();
    }

    @Test
    void refuses_runs_that_carry_no_answer_and_says_why() {
        Random random = new Random(3);
        double[] in = excitation(random);
        double[] out = Given.noisy(answer(PLAIN, in), 2, random);
        assertThat(need(in, new double[COUNT])).contains("all samples are equal");
        assertThat(need(new double[COUNT], out)).contains("all samples are equal");
        assertThat(need(in, Given.noisy(new double[COUNT], 1, random))).contains("follows the input");
        assertThat(need(Given.noisy(new double[COUNT], 1, random), out)).contains("follows the input");
        double[] holes = out.clone();
        Arrays.fill(holes, 100, 900, Double.NaN);
        assertThat(need(in, holes)).contains("that are not");
        assertThat(need(new double[] {1}, new double[] {1})).contains("enough samples");
        assertThat(need(Arrays.copyOfRange(in, 150, 250), Arrays.copyOf(out, 100)))
                .contains("samples or more");
        assertThat(Given.says(reduced(in, out), "is cut off")).isFalse();
        for (double limit : new double[] {60, 100}) {
            double[] cut = Arrays.stream(out).map(w -> Math.min(w, limit)).toArray();
            TestResult result = reduced(in, cut);
            String need = Given.need(result.outcome(ResponseParameter.GAIN));
            assertThat(Given.says(result, "is cut off") || need.contains("run into its limit"))
                    .as("cut at %s: %s", limit, need)
                    .isTrue();
        }
        Recording wrong = Given.recording("a.csv", STEP, Given.channel("w", "rad/s", out));
        assertThat(Given.need(Given.reduced(MOTOR, run(), wrong).outcome(ResponseParameter.GAIN)))
                .contains("an input and an output");
        BenchTest none = Given.test(TestKind.RESPONSE_RUN).done();
        assertThat(Given.need(Given.reduced(MOTOR, none).outcome(ResponseParameter.GAIN)))
                .contains("a recording");
    }

    private static String need(double[] in, double[] out) {
        return Given.need(reduced(in, out).outcome(ResponseParameter.GAIN));
    }

    private static final double[] HERTZ = {0.3, 0.8, 1.6, 4, 9};

    /** One sine, over two to four periods, with drift, mains hum, noise and a converter of 8 bits. */
    static Recording sine(String name, double hertz, Truth truth, double scatter, Random random) {
        double interval = (2 + 2 * random.nextDouble()) / hertz / COUNT;
        double w = 2 * Math.PI * hertz;
        double ratio = truth.gain() / Math.hypot(1, w * truth.tau()) * Math.exp(scatter * random.nextGaussian());
        double lag = w * truth.delay() + Math.atan(w * truth.tau()) + scatter * random.nextGaussian();
        double start = 6.28 * random.nextDouble();
        double hum = 6.28 * random.nextDouble();
        double drift = Given.within(random, 0.1) / (COUNT * interval);
        double[] in = Given.sampled(COUNT, interval, t -> Math.sin(w * t + start));
        double[] out = Given.sampled(
                COUNT,
                interval,
                t -> ratio * Math.sin(w * t + start - lag)
                        + 0.3
                        + drift * t
                        + 0.005 * Math.sin(2 * Math.PI * 50.02 * t + hum));
        return Given.recording(
                name,
                interval,
                Given.channel("u", "V", Given.eightBit(Given.noisy(in, 0.01, random), 1.5)),
                Given.channel("y", "V", Given.eightBit(Given.noisy(out, 0.02, random), 3)));
    }

    private static List<TestResult> sines(Truth truth, double scatter, Random random) {
        List<BenchTest> tests = new ArrayList<>();
        Map<String, Recording> recordings = new LinkedHashMap<>();
        for (double hertz : HERTZ) {
            String name = "sine " + hertz;
            recordings.put(name, sine(name, hertz, truth, scatter, random));
            tests.add(new Given.Test(TestKind.SINE_RESPONSE, "sine response hub " + tests.size())
                    .recorded(name)
                    .channel("u", "input")
                    .channel("y", "output")
                    .done());
        }
        return Identification.identify(Given.machine(MOTOR), tests, recordings).tests();
    }

    static final Truth TACHO = new Truth(1.4, 0.1, 3e-3);

    @Test
    void finds_ratio_and_phase_of_each_sine_and_the_lag_of_all() {
        List<TestResult> results = sines(TACHO, 0, new Random(4));
        TestResult first = results.get(0);
        assertThat(value(first, ResponseParameter.GAIN).si()).isCloseTo(1.4, within(0.01));
        assertThat(value(first, ResponseParameter.TIME_CONSTANT).si()).isCloseTo(0.1, within(0.002));
        assertThat(value(first, ResponseParameter.DELAY).si()).isCloseTo(3e-3, within(5e-4));
        double w = 2 * Math.PI * HERTZ[2];
        assertThat(value(results.get(2), ResponseParameter.RATIO).si())
                .isCloseTo(1.4 / Math.hypot(1, 0.1 * w), within(0.005));
        assertThat(value(results.get(2), ResponseParameter.PHASE).si())
                .isCloseTo(-Math.atan(0.1 * w) - 3e-3 * w, within(0.005));
        assertThat(results.get(2).values()).doesNotContainKey(ResponseParameter.GAIN);
        assertThat(Given.says(first, "first order through")).isTrue();
    }

    @Test
    void refuses_sines_that_carry_no_answer_and_says_why() {
        Random random = new Random(5);
        BenchTest test = Given.test(TestKind.SINE_RESPONSE)
                .recorded("a.csv")
                .channel("u", "input")
                .channel("y", "output")
                .done();
        double[] noise = Given.noisy(new double[COUNT], 1, random);
        double[] sine = Given.sampled(COUNT, STEP, t -> Math.sin(6 * t));
        assertThat(need(test, noise, sine)).contains("a sine of one frequency");
        assertThat(need(test, sine, noise)).contains("follows the sine");
        assertThat(need(test, sine, new double[COUNT])).contains("all samples are equal");
        assertThat(need(test, new double[] {1}, new double[] {1})).contains("enough samples");
        double[] cut = Arrays.stream(Given.noisy(sine, 0.01, random))
                .map(v -> Math.min(v, 0.8))
                .toArray();
        assertThat(need(test, sine, cut)).contains("run into its limit");
        double[] holes = sine.clone();
        Arrays.fill(holes, 0, 2000, Double.NaN);
        assertThat(need(test, sine, holes)).contains("that are not");
        TestResult alone = Given.reduced(MOTOR, test, recording(sine, Given.noisy(sine, 0.01, random)));
        assertThat(alone.outcome(ResponseParameter.RATIO).found()).isPresent();
        assertThat(Given.need(alone.outcome(ResponseParameter.GAIN))).contains("three or more sines");
        BenchTest elsewhere = Given.test(TestKind.SINE_RESPONSE)
                .recorded("a.csv")
                .channel("u", "input")
                .channel("y", "output")
                .with(TestFigure.FREQUENCY, "40 Hz")
                .done();
        assertThat(need(elsewhere, Given.noisy(sine, 0.01, random), sine)).contains("the stated frequency");
        double[] minus = Arrays.stream(sine).map(v -> -v).toArray();
        TestResult reversed = Given.reduced(MOTOR, test, recording(sine, Given.noisy(minus, 0.01, random)));
        assertThat(Math.abs(value(reversed, ResponseParameter.PHASE).si())).isCloseTo(Math.PI, within(0.01));
    }

    private static String need(BenchTest test, double[] in, double[] out) {
        return Given.need(Given.reduced(MOTOR, test, recording(in, out)).outcome(ResponseParameter.RATIO));
    }

    @Test
    void intervals_of_sines_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[4];
        for (int k = 0; k < 300; k++) {
            Random random = new Random(7000 + k);
            Truth m = new Truth(1 + random.nextDouble(), 0.07 + 0.06 * random.nextDouble(), 0.01);
            List<TestResult> results = sines(m, 0.02, random);
            double w = 2 * Math.PI * HERTZ[0];
            held[0] += Given.holds(value(results.get(0), ResponseParameter.GAIN), m.gain()) ? 1 : 0;
            held[1] += Given.holds(value(results.get(0), ResponseParameter.TIME_CONSTANT), m.tau()) ? 1 : 0;
            held[2] += Given.holds(value(results.get(0), ResponseParameter.DELAY), m.delay()) ? 1 : 0;
            TestResult exact = sines(m, 0, random).get(0);
            held[3] +=
                    Given.holds(value(exact, ResponseParameter.RATIO), m.gain() / Math.hypot(1, w * m.tau())) ? 1 : 0;
        }
        System.out.println("sine responses, seed 7000: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int count : held) {
            assertThat(count / 300.0).as("seed 7000").isBetween(0.92, 0.98);
        }
    }

    @Test
    void intervals_of_runs_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[3];
        for (int k = 0; k < 300; k++) {
            Random random = new Random(8000 + k);
            Truth m = new Truth(
                    150 + 200 * random.nextDouble(),
                    0.06 + 0.08 * random.nextDouble(),
                    STEP / FINE * Math.rint(FINE * (1 + 6 * random.nextDouble())));
            double[] in = excitation(random);
            double hum = 6.28 * random.nextDouble();
            double[] out = Given.noisy(answer(m, in), 3, random);
            for (int i = 0; i < COUNT; i++) {
                double drifted = out[i] + 0.5 * Math.sin(2 * Math.PI * 50.02 * i * STEP + hum);
                out[i] = 0.5 * Math.rint(drifted / 0.5);
            }
            TestResult result = reduced(in, out);
            held[0] += Given.holds(value(result, ResponseParameter.GAIN), m.gain()) ? 1 : 0;
            held[1] += Given.holds(value(result, ResponseParameter.TIME_CONSTANT), m.tau()) ? 1 : 0;
            held[2] += Given.holds(value(result, ResponseParameter.DELAY), m.delay()) ? 1 : 0;
        }
        System.out.println("response runs, seed 8000: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int count : held) {
            assertThat(count / 300.0).as("seed 8000").isBetween(0.92, 0.98);
        }
    }
}
