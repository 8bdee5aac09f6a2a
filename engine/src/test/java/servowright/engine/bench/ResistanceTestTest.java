package servowright.engine.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static servowright.engine.machine.ReadingFigure.CURRENT;
import static servowright.engine.machine.ReadingFigure.RESISTANCE;
import static servowright.engine.machine.ReadingFigure.VOLTAGE;

import org.junit.jupiter.api.Test;
import servowright.engine.machine.TestFigure;

class ResistanceTestTest {
    private static Given.Test cold() {
        return Given.resistance("resistance hub 1").with(TestFigure.WINDING_AT, "20 degC ± 1 K");
    }

    private static Candidate found(TestResult result) {
        return result.outcome(MotorParameter.PHASE_RESISTANCE).found().orElseThrow();
    }

    private static String need(TestResult result) {
        return Given.need(result.outcome(MotorParameter.PHASE_RESISTANCE));
    }

    @Test
    void takes_the_slope_over_two_currents() {
        TestResult result = ResistanceTest.of(cold().reading("A to B", CURRENT, "1.002 A", VOLTAGE, "0.2491 V")
                .reading("A to B", CURRENT, "2.004 A", VOLTAGE, "0.4879 V")
                .limits("voltage", "± 0.1 %")
                .limits("current", "± 0.3 %")
                .done());
        // Slope (0.4879 - 0.2491)/(2.004 - 1.002) = 0.23832 ohm between terminals, half of it per phase.
        assertThat(found(result).value().si()).isCloseTo(0.238323 / 2, within(2e-6));
        assertThat(found(result).value().relativeUncertainty()).isBetween(0.0020, 0.0045);
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("at zero current"));
    }

    @Test
    void reads_both_hook_ups_of_one_meter() {
        // Meter 78 mohm with leads subtracted: 39.0 mohm per phase between two terminals, 52.0 mohm one against two
        // (practitioner case, recomputed).
        TestResult two = ResistanceTest.of(cold().with(TestFigure.LEADS, "0 mohm")
                .reading("A to B", RESISTANCE, "78 mohm")
                .done());
        TestResult one = ResistanceTest.of(cold().with(TestFigure.LEADS, "0 mohm")
                .reading("A to BC", RESISTANCE, "78 mohm")
                .done());
        assertThat(found(two).value().si()).isCloseTo(39.0e-3, within(1e-9));
        assertThat(found(one).value().si()).isCloseTo(52.0e-3, within(1e-9));
    }

    @Test
    void corrects_a_warm_winding() {
        TestResult warm = ResistanceTest.of(Given.resistance("resistance hub 2")
                .with(TestFigure.WINDING_AT, "80 degC ± 1 K")
                .reading("A to B", CURRENT, "2.000 A", VOLTAGE, "2.47152 V")
                .done());
        // Copper at 80 degC: 1.23576 times its resistance at 20 degC with k = 234.5 (recomputed).
        assertThat(found(warm).value().si()).isCloseTo(0.5, within(2e-6));
    }

    @Test
    void splits_three_pairs_into_phases_and_remarks_imbalance() {
        TestResult result = ResistanceTest.of(cold().reading("A to B", CURRENT, "2.000 A", VOLTAGE, "0.480 V")
                .reading("B to C", CURRENT, "2.000 A", VOLTAGE, "0.500 V")
                .reading("C to A", CURRENT, "2.000 A", VOLTAGE, "0.480 V")
                .done());
        assertThat(found(result).value().si()).isCloseTo(0.730 / 6, within(1e-9));
        assertThat(result.details()).anyMatch(p -> p.template().contains("phases of the equivalent star"));
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("shorted turn"));
    }

    @Test
    void refuses_what_gives_no_resistance_and_says_why() {
        assertThat(need(ResistanceTest.of(cold().done()))).contains("readings");
        assertThat(need(ResistanceTest.of(
                        cold().reading("", RESISTANCE, "0.24 ohm").done())))
                .contains("how the winding was contacted");
        assertThat(need(ResistanceTest.of(cold().reading("A to B", CURRENT, "0 A", VOLTAGE, "0.1 V")
                        .done())))
                .contains("a current other than 0");
        assertThat(need(ResistanceTest.of(cold().reading("A to B", CURRENT, "-1 A", VOLTAGE, "0.1 V")
                        .done())))
                .contains("one sign");
        assertThat(need(ResistanceTest.of(cold().with(TestFigure.LEADS, "0.3 ohm")
                        .reading("A to B", RESISTANCE, "0.24 ohm")
                        .done())))
                .contains("above the resistance of the leads");
    }

    @Test
    void shows_both_readings_of_an_unstated_hook_up() {
        TestResult result =
                ResistanceTest.of(cold().reading("", RESISTANCE, "0.24 ohm").done());
        assertThat(result.details())
                .anyMatch(p -> p.figures().containsKey("two") && p.figures().containsKey("one"));
    }

    @Test
    void widens_for_unstated_leads_of_a_meter() {
        TestResult unstated = ResistanceTest.of(
                cold().reading("A to B", RESISTANCE, "0.240 ohm").done());
        assertThat(found(unstated).value().relativeUncertainty()).isBetween(0.23, 0.26);
        assertThat(found(unstated).assumptions()).anyMatch(p -> p.template().contains("leads"));
    }

    @Test
    void remarks_a_hook_up_that_was_mixed_up() {
        TestResult result = ResistanceTest.of(cold().reading("A to B", CURRENT, "2.000 A", VOLTAGE, "0.480 V")
                .reading("A to BC", CURRENT, "2.000 A", VOLTAGE, "0.480 V")
                .done());
        assertThat(result.remarks()).anyMatch(p -> p.template().contains("other hook-up"));
    }

    @Test
    void shares_the_gain_of_its_instruments_between_pairs() {
        TestResult one = ResistanceTest.of(cold().reading("A to B", CURRENT, "2.00000 A", VOLTAGE, "4.80000 V")
                .done());
        TestResult three = ResistanceTest.of(cold().reading("A to B", CURRENT, "2.00000 A", VOLTAGE, "4.80000 V")
                .reading("B to C", CURRENT, "2.00000 A", VOLTAGE, "4.80000 V")
                .reading("C to A", CURRENT, "2.00000 A", VOLTAGE, "4.80000 V")
                .done());
        double alone = found(one).value().relativeUncertainty();
        assertThat(found(three).value().relativeUncertainty()).isCloseTo(alone, within(1e-3 * alone));
    }
}
