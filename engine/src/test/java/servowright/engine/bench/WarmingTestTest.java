package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.SINCE;
import static servowright.engine.machine.ReadingFigure.TEMPERATURE;
import static servowright.engine.machine.ReadingFigure.VOLTAGE;

import java.util.Arrays;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Motors heated by a current through two terminals; winding, housing and copper are stepped through the heat balance here. */
class WarmingTestTest {
    private static final Motor MOTOR = Given.motor(MotorFigure.WINDING_LIMIT, "110 degC");

    /** 1.2 K/W, 40 J/K, 2.0 K/W, 400 J/K: time constants 43.4099 and 884.590 s (golden figures, recomputed). */
    private static final Body PLAIN = new Body(1.2, 40, 2.0, 400, 0.24, 21, 21);

    /** Thermal figures, resistance at 20 degC, temperature at the start and of the air. */
    private record Body(double rwh, double cw, double rha, double ch, double ohm, double start, double air) {}

    /** Second by second: winding, housing in degC and the voltage at a current. */
    private record Run(double[] amp, double[] volt, double[] winding, double[] housing) {
        /** Four steps of the midpoint method a second. */
        static Run of(Body b, int seconds, DoubleUnaryOperator current) {
            Run run = new Run(new double[seconds], new double[seconds], new double[seconds], new double[seconds]);
            double w = b.start;
            double h = b.start;
            for (int k = 0; k < seconds; k++) {
                double i = current.applyAsDouble(k);
                run.amp[k] = i;
                run.winding[k] = w;
                run.housing[k] = h;
                run.volt[k] = i * b.ohm * (235 + w) / 255;
                for (int step = 0; step < 4; step++) {
                    double wMid = w + 0.125 * windingRate(b, i, w, h);
                    double hMid = h + 0.125 * housingRate(b, w, h);
                    w += 0.25 * windingRate(b, i, wMid, hMid);
                    h += 0.25 * housingRate(b, wMid, hMid);
                }
            }
            return run;
        }

        private static double windingRate(Body b, double i, double w, double h) {
            return (i * i * b.ohm * (235 + w) / 255 - (w - h) / b.rwh) / b.cw;
        }

        private static double housingRate(Body b, double w, double h) {
            return ((w - h) / b.rwh - (h - b.air) / b.rha) / b.ch;
        }
    }

    /** 8 A for fifty minutes, then half an ampere to read on. */
    private static double heatThenRead(double second) {
        return second < 3000 ? 8 : 0.5;
    }

    private static Given.Test test() {
        return Given.test(TestKind.HEATING)
                .recorded("a.csv")
                .channel("U", "voltage")
                .channel("I", "current")
                .with(TestFigure.WINDING_AT, "21 degC ± 0.3 K")
                .with(TestFigure.AIR_AT, "21 degC ± 0.3 K")
                .limits("voltage", "± 0.1 %")
                .limits("current", "± 0.1 %");
    }

    private static Recording recording(double[] volt, double[] amp) {
        return Given.recording("a.csv", 1, Given.channel("U", "V", volt), Given.channel("I", "A", amp));
    }

    private static Recording noisy(Run run, Random random) {
        return recording(Given.noisy(run.volt, 5e-4, random), Given.noisy(run.amp, 2e-3, random));
    }

    private static double value(TestResult result, MotorParameter what) {
        return Given.value(result, what).si();
    }

    @Test
    void tells_winding_and_housing_apart() {
        TestResult result = Given.reduced(
                MOTOR, test().done(), noisy(Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead), new Random(1)));
        assertThat(value(result, MotorParameter.WINDING_TO_HOUSING)).isCloseTo(1.2, within(0.01));
        assertThat(value(result, MotorParameter.WINDING_CAPACITY)).isCloseTo(40, within(0.4));
        assertThat(value(result, MotorParameter.HOUSING_TO_AIR)).isCloseTo(2.0, within(0.01));
        assertThat(value(result, MotorParameter.HOUSING_CAPACITY)).isCloseTo(400, within(4.0));
        assertThat(value(result, MotorParameter.THERMAL_RESISTANCE)).isCloseTo(3.2, within(0.02));
        assertThat(Given.figure(result, "time constants of the pair", "short").si())
                .isCloseTo(43.41, within(0.4));
        assertThat(Given.figure(result, "time constants of the pair", "long").si())
                .isCloseTo(884.6, within(8.0));
    }

    /**
     * Factors for bursts from the fitted pair: computed beforehand by stepping the heat balance of the true pair, copper of
     * 1/(235 + 21) per kelvin, to 110 degC (other program).
     */
    @Test
    void says_what_it_may_carry_for_short() {
        TestResult result = Given.reduced(
                MOTOR, test().done(), noisy(Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead), new Random(2)));
        assertThat(Given.figure(result, "for 10 s", "a").si()).isCloseTo(4.0291, within(0.03));
        assertThat(Given.figure(result, "for 10 s", "b").si()).isCloseTo(2.0035, within(0.02));
        assertThat(Given.figure(result, "for 10 s", "c").si()).isCloseTo(1.2691, within(0.01));
        assertThat(Given.figure(result, "cycles of 10 min", "b").si()).isCloseTo(1.4239, within(0.02));
    }

    @Test
    void a_thermometer_on_the_housing_narrows_it_and_its_zero_does_no_harm() {
        Run run = Run.of(PLAIN, 2000, t -> 8);
        double[] shown = Given.noisy(run.housing, 0.2, new Random(4));
        for (int k = 0; k < shown.length; k++) {
            shown[k] += 273.15 + 1.5;
        }
        Recording both = Given.recording(
                "a.csv",
                1,
                Given.channel("U", "V", Given.noisy(run.volt, 1e-2, new Random(5))),
                Given.channel("I", "A", run.amp),
                Given.channel("T", "degC", shown));
        Given.Test with = test().channel("T", "housing temperature").limits("temperature", "± 0.5 %");
        TestResult result = Given.reduced(MOTOR, with.done(), both);
        TestResult without = Given.reduced(MOTOR, test().done(), both);
        Known found = Given.value(result, MotorParameter.HOUSING_TO_AIR);
        assertThat(Given.holds(found, 2.0)).isTrue();
        assertThat(found.standardUncertainty())
                .isLessThan(Given.value(without, MotorParameter.HOUSING_TO_AIR).standardUncertainty());
        assertThat(Given.says(result, "thermometer on the housing agrees")).isTrue();
    }

    @Test
    void takes_a_fixed_limit_of_the_thermometer_as_one_of_the_rise() {
        Run run = Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead);
        double[] shown = Given.sampled(4500, 1, t -> run.housing[(int) t] + 273.15);
        Recording both = Given.recording(
                "a.csv",
                1,
                Given.channel("U", "V", Given.noisy(run.volt, 1e-2, new Random(11))),
                Given.channel("I", "A", run.amp),
                Given.channel("T", "degC", Given.noisy(shown, 0.1, new Random(12))));
        Given.Test loose = test().channel("T", "housing temperature").limits("temperature", "± 5 K");
        Given.Test tight = test().channel("T", "housing temperature").limits("temperature", "± 0.1 K");
        Known wide = Given.value(Given.reduced(MOTOR, loose.done(), both), MotorParameter.HOUSING_TO_AIR);
        Known narrow = Given.value(Given.reduced(MOTOR, tight.done(), both), MotorParameter.HOUSING_TO_AIR);
        assertThat(narrow.standardUncertainty()).isLessThan(wide.standardUncertainty());
        assertThat(Given.holds(wide, 2.0)).isTrue();
        assertThat(Given.holds(narrow, 2.0)).isTrue();
    }

    @Test
    void refuses_leads_that_would_leave_no_winding() {
        Run run = Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead);
        Given.Test leads = test().with(TestFigure.LEADS, "500 mohm");
        assertThat(need(t -> leads, noisy(run, new Random(13)))).contains("warms by 5 K");
    }

    /** A multimeter each for voltage and current and a watch: every half minute at first, later every two. */
    @Test
    void takes_readings_by_hand() {
        Run run = Run.of(PLAIN, 4200, t -> 8);
        Given.Test test = Given.test(TestKind.HEATING)
                .with(TestFigure.WINDING_AT, "21 degC ± 0.3 K")
                .with(TestFigure.AIR_AT, "21 degC ± 0.3 K")
                .limits("voltage", "± 0.1 %")
                .limits("current", "± 0.2 %");
        for (int k = 0; k < 4200; k += k < 300 ? 15 : 120) {
            test.reading(
                    "A to B",
                    SINCE,
                    k + " s",
                    VOLTAGE,
                    Given.text(run.volt[k], 4, "V"),
                    CURRENT,
                    "8.000 A",
                    TEMPERATURE,
                    Given.text(run.housing[k], 1, "degC"));
        }
        TestResult result = Given.reduced(MOTOR, test.done());
        assertThat(value(result, MotorParameter.WINDING_TO_HOUSING)).isCloseTo(1.2, within(0.03));
        assertThat(value(result, MotorParameter.HOUSING_TO_AIR)).isCloseTo(2.0, within(0.03));
        assertThat(value(result, MotorParameter.HOUSING_CAPACITY)).isCloseTo(400, within(10.0));
    }

    @Test
    void takes_leads_off_and_says_when_the_start_was_not_cold() {
        Run run = Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead);
        double[] atTheSupply = run.volt.clone();
        for (int k = 0; k < atTheSupply.length; k++) {
            atTheSupply[k] += 0.03 * run.amp[k];
        }
        Recording recording = recording(Given.noisy(atTheSupply, 5e-4, new Random(6)), run.amp);
        Given.Test stated = test().with(TestFigure.LEADS, "30 mohm ± 1 mohm");
        TestResult right = Given.reduced(MOTOR, stated.done(), recording);
        assertThat(value(right, MotorParameter.THERMAL_RESISTANCE)).isCloseTo(3.2, within(0.03));
        Given.Test cold = test().with(TestFigure.COLD_RESISTANCE, "240.9 mohm");
        TestResult wrong = Given.reduced(MOTOR, cold.done(), recording);
        assertThat(Given.says(wrong, "leads that were not taken off")).isTrue();
        assertThat(Given.says(right, "leads that were not taken off")).isFalse();
    }

    @Test
    void takes_a_current_counted_the_other_way() {
        Run run = Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead);
        double[] against = Given.sampled(4500, 1, t -> -run.amp[(int) t]);
        TestResult result =
                Given.reduced(MOTOR, test().done(), recording(Given.noisy(run.volt, 5e-4, new Random(7)), against));
        assertThat(value(result, MotorParameter.THERMAL_RESISTANCE)).isCloseTo(3.2, within(0.02));
        assertThat(Given.says(result, "opposite senses")).isTrue();
    }

    @Test
    void refuses_what_carries_no_answer_and_says_why() {
        Run run = Run.of(PLAIN, 4500, WarmingTestTest::heatThenRead);
        assertThat(need(t -> t, recording(Given.sampled(4500, 1, t -> 2), run.amp)))
                .contains("warms by 5 K");
        assertThat(need(t -> t, recording(new double[4500], new double[4500]))).contains("warms by 5 K");
        Run slight = Run.of(PLAIN, 4500, t -> 1);
        assertThat(need(t -> t, noisy(slight, new Random(8)))).contains("warms by 5 K");
        Run brief = Run.of(PLAIN, 400, t -> 8);
        assertThat(need(t -> t, noisy(brief, new Random(9)))).contains("long enough");
        double[] cut = Given.sampled(4500, 1, t -> Math.min(2.1, run.volt[(int) t]));
        assertThat(need(t -> t, recording(cut, run.amp))).isNotEmpty();
        double[] holes = run.volt.clone();
        Arrays.fill(holes, 100, 2000, Double.NaN);
        assertThat(need(t -> t, recording(holes, run.amp))).contains("that are not");
        assertThat(need(t -> t, recording(new double[] {2}, new double[] {8}))).contains("enough samples");
        Recording wrong = Given.recording("a.csv", 1, Given.channel("U", "V", run.volt));
        assertThat(need(t -> t, wrong)).contains("a current in");
        Given.Test unstated = Given.test(TestKind.HEATING)
                .recorded("a.csv")
                .channel("U", "voltage")
                .channel("I", "current");
        assertThat(need(t -> unstated, noisy(run, new Random(10)))).contains("temperatures of the winding");
        Given.Test mixed = Given.test(TestKind.HEATING);
        mixed.reading("", SINCE, "5 s", VOLTAGE, "2 V", CURRENT, "8 A")
                .reading("", SINCE, "1 s", VOLTAGE, "2 V", CURRENT, "8 A");
        assertThat(Given.need(Given.reduced(MOTOR, mixed.done()).outcome(MotorParameter.THERMAL_RESISTANCE)))
                .contains("in the order of time");
    }

    private static String need(UnaryOperator<Given.Test> with, Recording recording) {
        TestResult result = Given.reduced(MOTOR, with.apply(test()).done(), recording);
        return Given.need(result.outcome(MotorParameter.THERMAL_RESISTANCE));
    }

    /** A run with everything a bench has: errors of meters and thermometers, digits, noise, hum, a room that drifts. */
    private static TestResult drawn(Random random, Body body, boolean thermometer) {
        double startOff = Given.within(random, 0.3);
        double airOff = Given.within(random, 0.3);
        double gainU = 1 + Given.within(random, 0.001);
        double gainI = 1 + Given.within(random, 0.001);
        double share = 1 + Given.within(random, 0.01);
        double zero = Given.within(random, 2);
        Body real = new Body(body.rwh, body.cw, body.rha, body.ch, body.ohm, 21 + startOff, 21 + airOff);
        int seconds = (int) (2.5 * (body.rwh + body.rha) * body.ch) + 600;
        double amp = 4 + 4 * random.nextDouble();
        Run run = Run.of(real, seconds, t -> t < seconds - 600 ? amp : 0.4);
        double[] u = new double[seconds];
        double[] i = new double[seconds];
        double[] h = new double[seconds];
        double slow = 0;
        for (int k = 0; k < seconds; k++) {
            slow = 0.98 * slow + 0.03 * random.nextGaussian();
            double hum = 2e-4 * Math.sin(2 * Math.PI * 50.03 * k);
            u[k] = 1e-4 * Math.rint(1e4 * gainU * (run.volt[k] + hum + 2e-3 * random.nextGaussian()));
            i[k] = 1e-3 * Math.rint(1e3 * gainI * (run.amp[k] + 1e-3 * random.nextGaussian()));
            h[k] = 0.1 * Math.rint(10 * (21 + zero + share * (run.housing[k] - 21) + slow)) + 273.15;
        }
        Recording recording = Given.recording(
                "a.csv", 1, Given.channel("U", "V", u), Given.channel("I", "A", i), Given.channel("T", "degC", h));
        Given.Test test =
                thermometer ? test().channel("T", "housing temperature").limits("temperature", "± 1 %") : test();
        return Given.reduced(MOTOR, test.done(), recording);
    }

    private static Body body(Random random) {
        return new Body(
                0.6 + random.nextDouble(),
                20 + 40 * random.nextDouble(),
                1.5 + random.nextDouble(),
                200 + 200 * random.nextDouble(),
                0.2 + 0.1 * random.nextDouble(),
                21,
                21);
    }

    /** How many of 300 drawn runs hold each figure; every draw is reduced once. */
    private static void covers(long seed, boolean thermometer) {
        MotorParameter[] all = {
            MotorParameter.WINDING_TO_HOUSING,
            MotorParameter.WINDING_CAPACITY,
            MotorParameter.HOUSING_TO_AIR,
            MotorParameter.HOUSING_CAPACITY,
            MotorParameter.THERMAL_RESISTANCE
        };
        int[] held = new int[all.length];
        for (int k = 0; k < 300; k++) {
            Random random = new Random(seed + k);
            Body body = body(random);
            double[] truth = {body.rwh, body.cw, body.rha, body.ch, body.rwh + body.rha};
            TestResult result = drawn(random, body, thermometer);
            for (int j = 0; j < all.length; j++) {
                held[j] += Given.holds(Given.value(result, all[j]), truth[j]) ? 1 : 0;
            }
        }
        System.out.println("warming, seed " + seed + ": of 300 intervals hold the truth " + Arrays.toString(held));
        for (int n : held) {
            assertThat(n).as("seed " + seed).isBetween(276, 294);
        }
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        covers(9500, false);
    }

    @Test
    void intervals_with_a_thermometer_hold_it_too() {
        covers(9600, true);
    }
}
