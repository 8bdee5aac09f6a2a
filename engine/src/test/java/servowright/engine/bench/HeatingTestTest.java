package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.AFTER;
import static servowright.engine.machine.ReadingFigure.RESISTANCE;

import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.thermal.TwoNode;

/** A winding of 200 mohm at 20 degC; copper of 235 K: 210 mohm is 32.75 degC, 7.75 K above air of 25 degC (seen). */
class HeatingTestTest {
    private static Given.Test test() {
        return Given.test(TestKind.HEATING)
                .with(TestFigure.COLD_RESISTANCE, "200 mohm")
                .with(TestFigure.WINDING_AT, "20 degC ± 0.3 K")
                .with(TestFigure.AIR_AT, "25 degC ± 0.3 K")
                .limits("resistance", "± 0.3 %");
    }

    /** Readings that fall from 210 mohm towards 205 with 60 s. */
    private static Given.Test cooling(Given.Test test, int count) {
        for (int k = 0; k < count; k++) {
            double t = 10 + 15 * k;
            test.reading(
                    "A to B",
                    AFTER,
                    Given.text(t, 0, "s"),
                    RESISTANCE,
                    Given.text(205 + 5 * Math.exp(-t / 60), 4, "mohm"));
        }
        return test;
    }

    private static TestResult reduced(Given.Test test) {
        return Given.reduced(Given.motor(), test.done());
    }

    @Test
    void carries_the_resistance_back_to_switching_off() {
        TestResult result = reduced(cooling(test(), 8).with(TestFigure.LOSS, "5 W"));
        // 7.75 K on 5 W.
        assertThat(Given.value(result, MotorParameter.THERMAL_RESISTANCE).si()).isCloseTo(1.55, within(1e-3));
        assertThat(Given.says(result, "winding at")).isTrue();
    }

    @Test
    void takes_the_heat_from_a_direct_current() {
        TestResult result = reduced(cooling(test(), 8).with(TestFigure.HEATING_CURRENT, "5 A"));
        // 25 A² · 0.21 ohm = 5.25 W, 7.75 K.
        assertThat(Given.value(result, MotorParameter.THERMAL_RESISTANCE).si()).isCloseTo(7.75 / 5.25, within(1e-3));
    }

    @Test
    void refuses_what_shows_no_cooling_and_says_why() {
        assertThat(need(test().with(TestFigure.LOSS, "5 W"))).contains("two or more readings");
        assertThat(need(cooling(test(), 3).with(TestFigure.LOSS, "5 W"))).contains("four or more");
        assertThat(need(cooling(test(), 8))).contains("heat put in");
        Given.Test warming = test().with(TestFigure.LOSS, "5 W");
        Given.Test flat = test().with(TestFigure.LOSS, "5 W");
        Given.Test cold = test().with(TestFigure.LOSS, "5 W");
        for (int k = 0; k < 8; k++) {
            String t = 10 * k + " s";
            warming.reading("", AFTER, t, RESISTANCE, 205 + k + " mohm");
            flat.reading("", AFTER, t, RESISTANCE, "210 mohm");
            cold.reading("", AFTER, t, RESISTANCE, Given.text(180 + 5 * Math.exp(-k / 4.0), 3, "mohm"));
        }
        assertThat(need(warming)).contains("that fall");
        assertThat(need(flat)).contains("that fall");
        assertThat(need(cold)).contains("above the cold one");
        Given.Test unstated = Given.test(TestKind.HEATING);
        assertThat(need(cooling(unstated, 8))).contains("the winding cold");
    }

    @Test
    void says_when_the_first_reading_came_late() {
        Given.Test late = test().with(TestFigure.LOSS, "5 W");
        for (int k = 0; k < 8; k++) {
            double t = 60 + 15 * k;
            late.reading(
                    "", AFTER, Given.text(t, 0, "s"), RESISTANCE, Given.text(205 + 5 * Math.exp(-t / 60), 4, "mohm"));
        }
        assertThat(Given.says(reduced(late), "what cooled before it is not seen"))
                .isTrue();
    }

    private static String need(Given.Test test) {
        return Given.need(reduced(test).outcome(MotorParameter.THERMAL_RESISTANCE));
    }

    /** A winding that cools into its housing, which stays warm. */
    private static boolean holds(Random random) {
        double loss = 10 + 10 * random.nextDouble();
        TwoNode pair = new TwoNode(0.6, 20 + 20 * random.nextDouble(), 1.5, 1000);
        TwoNode.Rise warm = pair.settled(loss);
        double gain = 1 + Given.within(random, 0.003);
        double air = 25 + Given.within(random, 0.3);
        double coldAt = 20 + Given.within(random, 0.3);
        Given.Test test = Given.test(TestKind.HEATING)
                .with(TestFigure.COLD_RESISTANCE, Given.text(gain * 200 * (235 + coldAt) / 255, 4, "mohm"))
                .with(TestFigure.WINDING_AT, "20 degC ± 0.3 K")
                .with(TestFigure.AIR_AT, "25 degC ± 0.3 K")
                .with(TestFigure.LOSS, Given.text(loss * (1 + Given.within(random, 0.01)), 3, "W ± 1 %"))
                .limits("resistance", "± 0.3 %");
        for (int k = 0; k < 12; k++) {
            double t = 4 + 4 * k;
            double celsius = air + pair.after(warm, 0, t).windingKelvin();
            double ohm = gain * 200 * (235 + celsius) / 255 + 0.15 * random.nextGaussian();
            test.reading("", AFTER, Given.text(t, 0, "s"), RESISTANCE, Given.text(ohm, 2, "mohm"));
        }
        Known found = Given.value(reduced(test), MotorParameter.THERMAL_RESISTANCE);
        return Given.holds(found, 2.1);
    }

    @Test
    void intervals_hold_the_truth_as_often_as_they_say() {
        assertThat(Given.share("heating", 9400, HeatingTestTest::holds))
                .as("seed 9400")
                .isBetween(0.92, 0.98);
    }
}
