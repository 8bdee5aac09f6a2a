package servowright.engine.acceptance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Source;
import servowright.engine.quantity.Quantity;

class JudgeTest {

    private static Known torque(double newtonMetre, double standardUncertainty) {
        return Known.of(
                Quantity.of(newtonMetre, "N m"), standardUncertainty, Source.of("one"), Origin.MEASURED, "here");
    }

    private static Known limit(double newtonMetre) {
        return Known.exact(Quantity.of(newtonMetre, "N m"), Origin.DECLARED, "here");
    }

    @Test
    void an_interval_well_inside_holds() {
        assertThat(Judge.atLeast(torque(1.40, 0.05), limit(1.02), 0.1).verdict())
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void an_interval_inside_but_within_the_margin_is_tight() {
        // Asks 1.02, has 1.18 ± 0.09 at 95 %: inside, yet less than a tenth to spare.
        assertThat(Judge.atLeast(torque(1.18, 0.09 / 1.96), limit(1.02), 0.1).verdict())
                .isEqualTo(Verdict.TIGHT);
    }

    @Test
    void an_interval_outside_fails() {
        assertThat(Judge.atLeast(torque(0.9, 0.05), limit(1.02), 0.1).verdict()).isEqualTo(Verdict.FAILS);
        assertThat(Judge.atMost(torque(1.2, 0.05), limit(1.02), 0.1).verdict()).isEqualTo(Verdict.FAILS);
    }

    @Test
    void an_interval_across_the_limit_is_not_shown() {
        assertThat(Judge.atMost(torque(1.0, 0.05), limit(1.02), 0.1).verdict()).isEqualTo(Verdict.NOT_SHOWN);
        assertThat(Judge.atMost(torque(1.05, 0.05), limit(1.02), 0.1).verdict()).isEqualTo(Verdict.NOT_SHOWN);
    }

    @Test
    void an_exact_figure_at_its_limit_lies_inside() {
        assertThat(Judge.atMost(limit(1.02), limit(1.02), 0.1).verdict()).isEqualTo(Verdict.TIGHT);
        assertThat(Judge.atMost(limit(1.02), limit(1.02), 0).verdict()).isEqualTo(Verdict.HOLDS);
    }

    @Test
    void a_source_shared_with_the_limit_takes_itself_off() {
        Known value = torque(1.0, 0.05);
        assertThat(Judge.atMost(value, value.times(1.2), 0.1).spread()).isCloseTo(0.2 * 0.05 * 1.95996, within(1e-5));
    }

    @Test
    void few_degrees_of_freedom_widen_the_interval() {
        Known value = Known.of(Quantity.of(1, "N m"), 0.05, Source.of("two readings", 2), Origin.MEASURED, "here");
        // Student's t for 95 % and two degrees of freedom is 4.303, JCGM 100:2008, table G.2 (from memory).
        assertThat(Judge.atMost(value, limit(1.2), 0).spread()).isCloseTo(4.303 * 0.05, within(1e-4));
        assertThat(Judge.atMost(value, limit(1.2), 0).verdict()).isEqualTo(Verdict.NOT_SHOWN);
    }

    @Test
    void the_limit_may_be_uncertain_too() {
        Known uncertain = Known.of(Quantity.of(1.2, "N m"), 0.2, Source.of("label"), Origin.DATA_SHEET, "label");
        assertThat(Judge.atMost(limit(1.0), uncertain, 0).verdict()).isEqualTo(Verdict.NOT_SHOWN);
    }
}
