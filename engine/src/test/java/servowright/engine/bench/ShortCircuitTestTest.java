package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.SPEED;

import java.util.Locale;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;

/** A motor of 7 pole pairs, 2.5 mWb, 50 mohm and 60 uH: I = ω λ/√(R² + (ω L)²), recomputed. */
class ShortCircuitTestTest {
    private static final double[] SPEEDS = {50, 150, 300, 600};

    private static Motor motor(double flux, double ohm) {
        return Given.motor(
                MotorFigure.POLE_PAIRS,
                "7",
                MotorFigure.FLUX_LINKAGE,
                String.format(Locale.ROOT, "%.7f mWb ± 0.5 %%", 1e3 * flux),
                MotorFigure.RESISTANCE,
                String.format(Locale.ROOT, "%.6f mohm ± 1 %% [phase, 20 degC]", 1e3 * ohm));
    }

    private static double amp(double radPerS) {
        double w = 7 * radPerS;
        return w * 2.5e-3 / Math.hypot(0.05, w * 60e-6);
    }

    private static Given.Test test() {
        return Given.test(TestKind.SHORT_CIRCUIT)
                .with(TestFigure.WINDING_AT, "20 degC ± 0.5 K")
                .with(TestFigure.MAGNETS_AT, "20 degC ± 0.5 K")
                .limits("current", "± 0.5 %")
                .limits("speed", "± 0.1 %");
    }

    private static Given.Test readings(double share, String basis) {
        Given.Test test = test();
        for (double w : SPEEDS) {
            test.reading("", SPEED, Given.text(w, 1, "rad/s"), CURRENT, Given.text(share * amp(w), 4, "A" + basis));
        }
        return test;
    }

    private static TestResult reduced(Given.Test test) {
        return Given.reduced(motor(2.5e-3, 0.05), test.done());
    }

    @Test
    void finds_the_inductance_from_peak_and_from_rms_currents() {
        assertThat(Given.value(reduced(readings(1, " [q axis]")), MotorParameter.D_INDUCTANCE)
                        .si())
                .isCloseTo(60e-6, within(0.05e-6));
        assertThat(Given.value(reduced(readings(Math.sqrt(0.5), " [phase rms]")), MotorParameter.D_INDUCTANCE)
                        .si())
                .isCloseTo(60e-6, within(0.05e-6));
    }

    @Test
    void says_where_it_brakes_hardest() {
        // ω = R/(p L) = 119.05 rad/s and T = 3/4 p λ²/L = 0.546875 N m (recomputed).
        assertThat(Given.says(reduced(readings(1, " [q axis]")), "brakes hardest"))
                .isTrue();
    }

    @Test
    void refuses_what_shows_no_inductance_and_says_why() {
        assertThat(need(test())).contains("two or more readings");
        Given.Test slow = test();
        for (double w : new double[] {2, 5, 10}) {
            slow.reading("", SPEED, Given.text(w, 1, "rad/s"), CURRENT, Given.text(amp(w), 4, "A [q axis]"));
        }
        assertThat(need(slow)).contains("where the inductance limits them");
        assertThat(need(readings(3, " [q axis]"))).contains("where the inductance limits them");
        assertThat(need(readings(1, " [supply]"))).contains("the supply's current");
        TestResult bare = Given.reduced(Given.motor(), readings(1, " [q axis]").done());
        assertThat(Given.need(bare.outcome(MotorParameter.D_INDUCTANCE))).contains("pole pairs, flux linkage");
    }

    private static String need(Given.Test test) {
        return Given.need(reduced(test).outcome(MotorParameter.D_INDUCTANCE));
    }

    private static boolean holds(Random random) {
        double gain = 1 + Given.within(random, 0.005);
        double tacho = 1 + Given.within(random, 0.001);
        Given.Test test = test();
        for (double w : SPEEDS) {
            test.reading(
                    "",
                    SPEED,
                    Given.text(w * tacho, 2, "rad/s"),
                    CURRENT,
                    Given.text(gain * amp(w) * (1 + 0.002 * random.nextGaussian()), 2, "A [q axis]"));
        }
        double flux = 2.5e-3 * (1 + Given.within(random, 0.005));
        double ohm = 0.05 * (1 + Given.within(random, 0.01)) / (1 + Given.within(random, 0.5) / 254.5);
        TestResult result = Given.reduced(motor(flux, ohm), test.done());
        return Given.holds(Given.value(result, MotorParameter.D_INDUCTANCE), 60e-6);
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(Given.share("short circuit", 8800, ShortCircuitTestTest::holds))
                .as("seed 8800")
                .isBetween(0.92, 0.98);
    }
}
