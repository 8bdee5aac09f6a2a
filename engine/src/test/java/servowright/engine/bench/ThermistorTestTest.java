package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** A block warmed in steps, with a thermistor that lags and a converter of 10 bits; the exponential is written out here. */
class ThermistorTestTest {
    private static final Motor MOTOR = Given.motor();
    private static final int COUNT = 2400;

    /** The thermistor in the block. */
    record Truth(double ohm, double beta) {
        double ohmAt(double kelvin) {
            return ohm * Math.exp(beta * (1 / kelvin - 1 / 298.15));
        }
    }

    static final Truth PLAIN = new Truth(10_000, 3600);

    /** Steps of 8 K every 200 s, each reached in 20 s. */
    private static double[] block() {
        double[] kelvin = new double[COUNT];
        double now = 293;
        for (int k = 0; k < COUNT; k++) {
            now += (293 + 8 * Math.floor(k / 300.0) - now) / 20;
            kelvin[k] = now;
        }
        return kelvin;
    }

    static Recording calibration(Truth m, double unalike, Random random) {
        double[] kelvin = block();
        double[] read = new double[COUNT];
        double[] share = new double[COUNT];
        double off = 0;
        for (int k = 0; k < COUNT; k++) {
            off = k % 100 == 0 ? unalike * random.nextGaussian() : off;
            double r = m.ohmAt(kelvin[k] + off);
            double hum = 0.0005 * Math.sin(2 * Math.PI * 50.02 * k);
            share[k] = Math.rint(1023 * (r / (r + 10_000) + hum + 0.001 * random.nextGaussian())) / 1023;
            read[k] = 0.1 * Math.rint(10 * (kelvin[k] - 273.15 + 0.05 * random.nextGaussian())) + 273.15;
        }
        return recording(read, share);
    }

    private static Recording recording(double[] kelvin, double[] share) {
        return Given.recording("a.csv", 1, Given.channel("t", "degC", kelvin), Given.channel("q", "", share));
    }

    static Given.Test test() {
        return Given.test(TestKind.THERMISTOR_CHECK)
                .recorded("a.csv")
                .channel("t", "temperature")
                .channel("q", "divider")
                .with(TestFigure.DIVIDER, "10 kohm");
    }

    private static Known value(TestResult result, ThermistorParameter what) {
        return result.outcome(what).found().orElseThrow().value();
    }

    @Test
    void finds_the_constants_and_is_content_with_declared_ones_that_agree() {
        BenchTest test = test().with(TestFigure.BETA, "3600 K")
                .with(TestFigure.RESISTANCE_AT_25, "10 kohm")
                .done();
        TestResult result = Given.reduced(MOTOR, test, calibration(PLAIN, 0, new Random(1)));
        assertThat(value(result, ThermistorParameter.BETA).si()).isCloseTo(3600, within(20.0));
        assertThat(value(result, ThermistorParameter.RESISTANCE_AT_25).si()).isCloseTo(10_000, within(60.0));
        assertThat(Given.figure(result, "declared constants", "astray").si()).isLessThan(0.5);
    }

    /** The constants read far too low: as if the thermistor were another one. */
    @Test
    void says_by_how_much_declared_constants_read_wrong() {
        BenchTest test = test().with(TestFigure.THERMISTOR_A, "1.2666e-3")
                .with(TestFigure.THERMISTOR_B, "2.3661e-4")
                .with(TestFigure.THERMISTOR_C, "9.6094e-8")
                .done();
        TestResult result = Given.reduced(MOTOR, test, calibration(PLAIN, 0, new Random(2)));
        // At 349 K the resistance is 1722 ohm, for which the constants give 325.8 K (recomputed outside).
        assertThat(Given.figure(result, "declared constants", "astray").si()).isCloseTo(23.2, within(1.0));
        assertThat(Given.says(result, "declared constants read")).isTrue();
    }

    /** Constants with 5 % more ohm read too warm by ln 1.05 · T²/β: most where it is warmest, 1.65 K at 349 K (recomputed). */
    @Test
    void holds_constants_of_the_motor_against_the_curve_where_the_test_states_none() {
        Motor sensed =
                Given.motor(MotorFigure.THERMISTOR_RESISTANCE, "10.5 kohm", MotorFigure.THERMISTOR_BETA, "3600 K");
        TestResult result = Given.reduced(sensed, test().done(), calibration(PLAIN, 0, new Random(1)));
        double astray = Given.figure(result, "declared constants", "astray").si();
        assertThat(astray).isCloseTo(Math.log(1.05) * 349 * 349 / 3600, within(0.3));
        assertThat(Given.says(result, "declared constants read")).isTrue();
        TestResult bare = Given.reduced(MOTOR, test().done(), calibration(PLAIN, 0, new Random(1)));
        assertThat(Given.says(bare, "declared constants read")).isFalse();
    }

    @Test
    void takes_readings_by_hand() {
        Given.Test test = Given.test(TestKind.THERMISTOR_CHECK);
        for (int celsius = 20; celsius <= 80; celsius += 15) {
            test.reading(
                    "",
                    ReadingFigure.TEMPERATURE,
                    celsius + " degC",
                    ReadingFigure.RESISTANCE,
                    Given.text(PLAIN.ohmAt(celsius + 273.15), 0, "ohm"));
        }
        TestResult result = Given.reduced(MOTOR, test.done());
        assertThat(value(result, ThermistorParameter.BETA).si()).isCloseTo(3600, within(2.0));
    }

    @Test
    void refuses_runs_that_carry_no_answer_and_says_why() {
        Random random = new Random(3);
        Recording good = calibration(PLAIN, 0, random);
        double[] t = good.channels().get(0).samples();
        double[] q = good.channels().get(1).samples();
        double[] still = Given.noisy(Given.sampled(COUNT, 1, s -> 300), 0.1, random);
        assertThat(need(recording(still, q))).contains("settled temperatures");
        double[] rising = Arrays.stream(q).map(v -> 1 - v).toArray();
        assertThat(need(recording(t, rising))).contains("falls with the temperature");
        double[] counts = Arrays.stream(q).map(v -> 1023 * v).toArray();
        assertThat(need(recording(t, counts))).contains("between 0 and 1");
        assertThat(need(recording(t, new double[COUNT]))).contains("all samples are equal");
        double[] holes = t.clone();
        Arrays.fill(holes, 100, 2000, Double.NaN);
        assertThat(need(recording(holes, q))).contains("that are not");
        assertThat(need(recording(new double[] {300}, new double[] {0.5}))).contains("enough samples");
        Recording wrong = Given.recording("a.csv", 1, Given.channel("w", "rad/s", t));
        assertThat(need(wrong)).contains("a temperature in");
        assertThat(Given.need(Given.reduced(
                                MOTOR, Given.test(TestKind.THERMISTOR_CHECK).done())
                        .outcome(ThermistorParameter.BETA)))
                .contains("four readings");
    }

    private static String need(Recording recording) {
        return Given.need(Given.reduced(MOTOR, test().done(), recording).outcome(ThermistorParameter.BETA));
    }

    /** Thermometer and thermistor are never quite as warm as each other, and differently so from time to time. */
    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        int[] held = new int[2];
        for (int k = 0; k < 300; k++) {
            Random random = new Random(6700 + k);
            Truth m = new Truth(8000 + 4000 * random.nextDouble(), 3300 + 800 * random.nextDouble());
            TestResult result = Given.reduced(MOTOR, test().done(), calibration(m, 0.3, random));
            held[0] += Given.holds(value(result, ThermistorParameter.BETA), m.beta()) ? 1 : 0;
            held[1] += Given.holds(value(result, ThermistorParameter.RESISTANCE_AT_25), m.ohm()) ? 1 : 0;
        }
        System.out.println("thermistor, seed 6700: of 300 intervals hold the truth " + Arrays.toString(held));
        for (int count : held) {
            assertThat(count / 300.0).as("seed 6700").isBetween(0.92, 0.98);
        }
    }
}
