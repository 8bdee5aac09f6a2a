package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RatioNameTest {

    private static final List<RatioName> NONE = List.of();

    @ParameterizedTest
    @CsvSource({
        "1.002, 1",
        "1.42, √2",
        "0.7071, 1/√2",
        "1.7296, √3",
        "0.577, 1/√3",
        "1.5, 3/2",
        "0.66, 1/(3/2)",
        "2.01, 2",
        "1.2247, √(3/2)",
        "1.1547, 2/√3",
        "0.866, 1/(2/√3)",
        "1.0472, π/3",
        "0.955, 1/(π/3)",
        "2.449, √6",
        "9.549, 60/2π",
        "6.283, 2π",
        "1.3333, 4/3"
    })
    void names_the_ratios_that_bases_make(double ratio, String words) {
        assertThat(RatioName.nearest(ratio, 0.02, NONE).orElseThrow().words()).isEqualTo(words);
    }

    @Test
    void names_nothing_far_from_everything() {
        assertThat(RatioName.fitting(5.1, 0.03, NONE)).isEmpty();
        assertThat(RatioName.nearest(5.1, 0.03, NONE)).isEmpty();
    }

    @Test
    void gives_alternatives_nearest_first_when_the_tolerance_holds_several() {
        assertThat(RatioName.fitting(1.46, 0.05, NONE))
                .extracting(RatioName.Match::words)
                .containsExactly("3/2", "√2");
    }

    /** Geared actuator: 2.6 and 0.29 N m/A, gear 9 (practitioner case, cause confirmed). */
    @Test
    void finds_the_gear_between_motor_side_and_load_side() {
        RatioName.Match match =
                RatioName.nearest(2.6 / 0.29, 0.03, List.of(RatioName.gear(9))).orElseThrow();
        assertThat(match.name().meaning()).contains("load side");
        assertThat(match.relativeOff()).isCloseTo(8.966 / 9 - 1, within(1e-4));
        assertThat(RatioName.gear(0.25).value()).isEqualTo(4);
    }

    @Test
    void finds_pole_pairs_between_electrical_and_mechanical_speed() {
        assertThat(RatioName.nearest(1 / 7.05, 0.02, List.of(RatioName.polePairs(7)))
                        .orElseThrow()
                        .words())
                .isEqualTo("1/pole pairs (7)");
    }

    /** Torque sensor slope 0.0724 against a declared 0.1095 N m/A: published recording, evaluated here. */
    @Test
    void smells_a_current_convention_in_a_declared_constant() {
        assertThat(RatioName.nearest(0.0724 / 0.1095, 0.03, NONE).orElseThrow().words())
                .isEqualTo("1/(3/2)");
    }

    @Test
    void refuses_nan_and_names_below_one() {
        assertThatThrownBy(() -> RatioName.fitting(Double.NaN, 0.03, NONE)).hasMessageContaining("ratio");
        assertThatThrownBy(() -> RatioName.fitting(2, Double.NaN, NONE)).hasMessageContaining("tolerance");
        assertThatThrownBy(() -> new RatioName("half", 0.5, "")).hasMessageContaining("named ratio");
    }
}
