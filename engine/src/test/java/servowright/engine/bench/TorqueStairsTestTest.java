package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.FORCE;
import static servowright.engine.machine.ReadingFigure.TORQUE;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** A motor of 7 pole pairs and 2.5 mWb gives 0.02625 N m per q-axis ampere, 0.0371231 per phase RMS ampere (recomputed). */
class TorqueStairsTestTest {
    private static final double KT = 0.02625;
    private static final Motor MOTOR = Given.motor(MotorFigure.POLE_PAIRS, "7");

    private static Given.Test stairs() {
        return Given.test(TestKind.TORQUE_STAIRS)
                .with(TestFigure.MAGNETS_AT, "20 degC ± 0.5 K")
                .limits("torque", "± 0.5 %")
                .limits("current", "± 0.5 %");
    }

    private static Given.Test readings(double perAmp, String basis) {
        Given.Test test = stairs();
        for (int k = 1; k <= 5; k++) {
            test.reading(
                    "",
                    CURRENT,
                    Given.text(2 * k, 2, "A" + basis),
                    TORQUE,
                    Given.text(2 * k * perAmp + 0.004, 4, "N m"));
        }
        return test;
    }

    private static TestResult reduced(Given.Test test, Recording... recordings) {
        return Given.reduced(MOTOR, test.done(), recordings);
    }

    private static Known flux(TestResult result) {
        return Given.value(result, MotorParameter.FLUX_LINKAGE);
    }

    @Test
    void gives_the_flux_linkage_behind_the_slope() {
        assertThat(flux(reduced(readings(KT, " [q axis]"))).si()).isCloseTo(2.5e-3, within(2e-6));
        assertThat(flux(reduced(readings(0.0371231, " [phase rms]"))).si()).isCloseTo(2.5e-3, within(2e-6));
        TestResult unsaid = reduced(readings(KT, ""));
        assertThat(flux(unsaid).si()).isCloseTo(2.5e-3, within(2e-6));
        assertThat(unsaid.outcome(MotorParameter.FLUX_LINKAGE)
                        .found()
                        .orElseThrow()
                        .assumptions())
                .anyMatch(p -> p.template().contains("basis of the current"));
    }

    @Test
    void takes_lever_and_scale() {
        Given.Test test = stairs().with(TestFigure.ARM, "120 mm ± 0.5 mm");
        for (int k = 1; k <= 5; k++) {
            test.reading("", CURRENT, 2 * k + ".00 A [q axis]", FORCE, Given.text(2 * k * KT / 0.12, 3, "N"));
        }
        Known flux = flux(reduced(test));
        assertThat(flux.si()).isCloseTo(2.5e-3, within(3e-6));
        // The arm alone is known to 0.5 mm of 120 mm as limits: 0.24 %.
        assertThat(flux.relativeUncertainty()).isBetween(0.0024, 0.012);
        Given.Test armless =
                stairs().reading("", CURRENT, "2 A", FORCE, "0.4 N").reading("", CURRENT, "4 A", FORCE, "0.8 N");
        assertThat(Given.need(reduced(armless).outcome(MotorParameter.FLUX_LINKAGE)))
                .contains("lever");
    }

    @Test
    void names_the_ratio_to_a_declared_constant() {
        Motor declared = Given.motor(MotorFigure.POLE_PAIRS, "7", MotorFigure.TORQUE_CONSTANT, "0.0371 N m/A [label]");
        TestResult result = Given.reduced(declared, readings(KT, " [q axis]").done());
        assertThat(Given.says(result, "near √2") || Given.says(result, "near 1/√2"))
                .isTrue();
    }

    @Test
    void widens_by_what_is_lost_at_high_current() {
        Given.Test test = stairs();
        for (int k = 1; k <= 8; k++) {
            double amp = 2.0 * k;
            test.reading(
                    "", CURRENT, amp + "0 A [q axis]", TORQUE, Given.text(KT * amp * (1 - 4e-4 * amp * amp), 4, "N m"));
        }
        TestResult result = reduced(test);
        assertThat(Given.says(result, "iron that saturates")).isTrue();
        // Torque per ampere at half the largest current: 2.5 mWb (1 − 4e-4 · 64) = 2.436 mWb (recomputed).
        assertThat(flux(result).si()).isCloseTo(2.436e-3, within(flux(result).expandedUncertainty()));
        assertThat(flux(result).relativeUncertainty()).isGreaterThan(0.03);
    }

    private static double[] ramp(double most) {
        return Given.sampled(4000, 1e-3, t -> Math.floor(t * 2) / 8 * most);
    }

    private static Recording recording(double[] amp, double[] torque) {
        return Given.recording("a.csv", 1e-3, Given.channel("i", "A", amp), Given.channel("T", "N m", torque));
    }

    private static Given.Test recorded(String current) {
        return stairs().recorded("a.csv").channel("i", current).channel("T", "torque");
    }

    @Test
    void refuses_what_shows_no_torque_constant_and_says_why() {
        Random random = new Random(11);
        double[] amp = Given.noisy(ramp(10), 0.02, random);
        double[] torque = Given.noisy(Arrays.stream(ramp(10)).map(i -> KT * i).toArray(), 1e-3, random);
        assertThat(need(recorded("supply current"), recording(amp, torque))).contains("the supply's current");
        assertThat(need(recorded("current"), recording(amp, new double[4000]))).contains("all samples are equal");
        assertThat(need(recorded("current"), recording(amp, Given.noisy(new double[4000], 0.01, random))))
                .contains("follows the current");
        double[] holes = torque.clone();
        Arrays.fill(holes, 100, 2100, Double.NaN);
        assertThat(need(recorded("current"), recording(amp, holes))).contains("that are not");
        assertThat(need(recorded("current"), recording(new double[] {1}, new double[] {1})))
                .contains("enough samples");
        assertThat(need(recorded("speed"), recording(amp, torque))).contains("a current in");
        assertThat(need(stairs())).contains("two or more readings");
        assertThat(need(readings(KT, " [supply]"))).contains("the supply's current");
    }

    @Test
    void takes_a_torque_that_is_counted_the_other_way() {
        double[] amp = Given.noisy(ramp(10), 0.02, new Random(12));
        double[] torque = Arrays.stream(ramp(10)).map(i -> -KT * i).toArray();
        TestResult result =
                reduced(recorded("q axis current"), recording(amp, Given.noisy(torque, 1e-3, new Random(13))));
        assertThat(flux(result).si()).isCloseTo(2.5e-3, within(2e-5));
        assertThat(Given.says(result, "opposite senses")).isTrue();
    }

    private static String need(Given.Test test, Recording... recordings) {
        return Given.need(reduced(test, recordings).outcome(MotorParameter.FLUX_LINKAGE));
    }

    private static boolean recordedHolds(Random random) {
        double flux = 1e-3 * Math.exp(2 * random.nextDouble());
        double gainT = 1 + Given.within(random, 0.005);
        double gainI = 1 + Given.within(random, 0.005);
        double kelvin = Given.within(random, 0.5);
        double kt = 1.5 * 7 * flux * (1 - 0.0011 * kelvin);
        double zero = 0.02 * random.nextDouble();
        double[] set = ramp(5 + 10 * random.nextDouble());
        double hum = 0.01 * kt;
        double[] torque = new double[set.length];
        for (int i = 0; i < set.length; i++) {
            torque[i] = gainT * (kt * set[i] + zero) + hum * Math.sin(2 * Math.PI * 50 * i * 1e-3);
        }
        double step = 0.05 * kt;
        double[] noisy = Given.noisy(torque, 0.2 * kt, random);
        for (int i = 0; i < noisy.length; i++) {
            noisy[i] = step * Math.rint(noisy[i] / step);
        }
        double[] amp = Given.noisy(Arrays.stream(set).map(i -> gainI * i).toArray(), 0.02, random);
        return Given.holds(flux(reduced(recorded("q axis current"), recording(amp, noisy))), flux);
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(Given.share("torque stairs", 8000, TorqueStairsTestTest::recordedHolds))
                .as("seed 8000")
                .isBetween(0.92, 0.98);
    }
}
