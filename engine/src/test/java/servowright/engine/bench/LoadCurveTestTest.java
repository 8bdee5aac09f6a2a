package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Motors on a brake at 6 V from a supply of 12 V, made here from U = R i + Ke ω and T = Kt i − T₀. */
class LoadCurveTestTest {
    static final Motor MOTOR = Given.motor(MotorFigure.POLE_PAIRS, "7");
    private static final int COUNT = 400;
    private static final double VOLT = 6;

    /** A q-axis ampere of a six-step ampere: 3/2 over 3√3/π, the ratio of the two torque constants per flux linkage. */
    private static final double PER_SIX_STEP = 1.5 / (3 * Math.sqrt(3) / Math.PI);

    /** What is on the brake. */
    record Truth(double ohm, double ke, double kt, double drag) {}

    static final Truth PLAIN = new Truth(0.066, 0.0195, 0.0185, 0.02);

    static Recording curve(Truth m, double supply, double noise, Random random) {
        double[] speed = new double[COUNT];
        double[] amp = new double[COUNT];
        double[] torque = new double[COUNT];
        double[] watt = new double[COUNT];
        double drift = Given.within(random, noise / 2);
        for (int k = 0; k < COUNT; k++) {
            double i = m.drag() / m.kt() + (VOLT / m.ohm() - m.drag() / m.kt()) * (k + 0.5) / COUNT;
            speed[k] = (VOLT - m.ohm() * i) / m.ke();
            double hum = 0.2 * noise * Math.sin(2 * Math.PI * 50.4 * k * 0.1);
            amp[k] = i * (VOLT / supply) * (1 + noise * random.nextGaussian());
            watt[k] = supply * amp[k];
            torque[k] = 0.001
                    * Math.rint(1000 * ((m.kt() * i - m.drag()) * (1 + noise * random.nextGaussian() + hum) + drift));
        }
        return recording(speed, torque, amp, watt);
    }

    private static Recording recording(double[] speed, double[] torque, double[] amp, double[] watt) {
        return Given.recording(
                "a.csv",
                0.1,
                Given.channel("w", "rad/s", speed),
                Given.channel("T", "N m", torque),
                Given.channel("i", "A", amp),
                Given.channel("P", "W", watt));
    }

    static Given.Test test(String current) {
        return Given.test(TestKind.LOAD_CURVE)
                .recorded("a.csv")
                .channel("w", "speed")
                .channel("T", "torque")
                .channel("i", current)
                .channel("P", "power")
                .with(TestFigure.APPLIED_VOLTAGE, "6 V")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 0.01 K")
                .limits("current", "± 0.02 %")
                .limits("torque", "± 0.02 %");
    }

    private static TestResult reduced(BenchTest test, Recording recording) {
        return Given.reduced(MOTOR, test, recording);
    }

    static double flux(Truth m) {
        return m.kt() * PER_SIX_STEP / 1.5 / 7;
    }

    @Test
    void finds_the_motor_where_the_bridge_is_fully_on() {
        TestResult result = reduced(test("six-step current").done(), curve(PLAIN, VOLT, 1e-3, new Random(1)));
        assertThat(Given.value(result, MotorParameter.FLUX_LINKAGE).si())
                .isCloseTo(flux(PLAIN), within(0.003 * flux(PLAIN)));
        assertThat(Given.figure(result, "between the terminals", "R").si()).isCloseTo(0.066, within(2e-4));
        assertThat(Given.figure(result, "between the terminals", "Ke").si()).isCloseTo(0.0195, within(5e-5));
        assertThat(Given.figure(result, "between the terminals", "T0").si()).isCloseTo(0.02, within(0.003));
        assertThat(Given.says(result, "before a chopper")).isFalse();
    }

    /** U_s I_s = U I: half the voltage, twice the current. */
    @Test
    void finds_that_the_current_is_that_of_a_supply_before_a_chopper_and_scales_it() {
        for (String said : new String[] {"supply current", "six-step current", "current"}) {
            TestResult result = reduced(test(said).done(), curve(PLAIN, 12, 1e-3, new Random(2)));
            assertThat(Given.says(result, "before a chopper")).as(said).isTrue();
            assertThat(Given.value(result, MotorParameter.FLUX_LINKAGE).si())
                    .isCloseTo(flux(PLAIN), within(0.003 * flux(PLAIN)));
        }
    }

    @Test
    void refuses_curves_that_carry_no_answer_and_says_why() {
        Random random = new Random(3);
        Recording good = curve(PLAIN, VOLT, 1e-3, random);
        double[][] c = good.channels().stream().map(x -> x.samples()).toArray(double[][]::new);
        double[] noise = Given.noisy(new double[COUNT], 1, random);
        assertThat(need(recording(c[0], noise, c[2], c[3]))).contains("on lines");
        assertThat(need(recording(c[0], new double[COUNT], c[2], c[3]))).contains("all samples are equal");
        assertThat(need(recording(c[0], c[1], new double[COUNT], c[3]))).contains("all samples are equal");
        double[] backwards = Arrays.stream(c[0]).map(w -> 300 - w).toArray();
        assertThat(need(recording(backwards, c[1], c[2], c[3]))).contains("falls with speed");
        double[] holes = c[1].clone();
        Arrays.fill(holes, 10, 200, Double.NaN);
        assertThat(need(recording(c[0], holes, c[2], c[3]))).contains("that are not");
        double[] one = {1};
        assertThat(need(recording(one, one, one, one))).contains("enough samples");
        double[] cut = Arrays.stream(c[2]).map(i -> Math.min(i, 70)).toArray();
        assertThat(Given.says(reduced(test("current").done(), recording(c[0], c[1], cut, c[3])), "is cut off"))
                .isTrue();
        double[] low = Arrays.stream(c[2]).map(i -> 3 * i).toArray();
        assertThat(need(recording(c[0], c[1], c[2], low))).contains("below the voltage applied");
        Recording without = Given.recording(
                "a.csv",
                0.1,
                good.channels().get(0),
                good.channels().get(1),
                good.channels().get(2));
        assertThat(Given.need(reduced(test("supply current").done(), without).outcome(MotorParameter.FLUX_LINKAGE)))
                .contains("the supply's current is not the motor's");
        assertThat(Given.need(
                        Given.reduced(MOTOR, Given.test(TestKind.LOAD_CURVE).done())
                                .outcome(MotorParameter.FLUX_LINKAGE)))
                .contains("a recording");
        BenchTest unsaid = Given.test(TestKind.LOAD_CURVE).recorded("a.csv").done();
        assertThat(Given.need(reduced(unsaid, good).outcome(MotorParameter.FLUX_LINKAGE)))
                .contains("the voltage at the motor");
        double[] minus = Arrays.stream(c[1]).map(t -> -t).toArray();
        assertThat(Given.says(reduced(test("current").done(), recording(c[0], minus, c[2], c[3])), "opposite senses"))
                .isTrue();
    }

    private static String need(Recording recording) {
        return Given.need(reduced(test("current").done(), recording).outcome(MotorParameter.FLUX_LINKAGE));
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(Given.share("load curve", 6100, random -> {
                    Truth m = new Truth(
                            0.05 + 0.05 * random.nextDouble(),
                            0.0195,
                            0.015 + 0.01 * random.nextDouble(),
                            0.01 + 0.02 * random.nextDouble());
                    double supply = random.nextBoolean() ? VOLT : 15;
                    TestResult result = reduced(test("supply current").done(), curve(m, supply, 5e-3, random));
                    return Given.holds(Given.value(result, MotorParameter.FLUX_LINKAGE), flux(m));
                }))
                .isBetween(0.92, 0.98);
    }
}
