package servowright.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class RequireTest {
    @Test
    void refuses_nan_and_says_which() {
        assertThatThrownBy(() -> Require.positive("phase resistance", Double.NaN, "Ω"))
                .hasMessage("phase resistance must be finite and above 0 Ω, was NaN Ω");
        assertThatThrownBy(() -> Require.notNegative("inertia", Double.NaN, "kg m2"))
                .hasMessageContaining("not below 0");
        assertThatThrownBy(() -> Require.within("share", 0, 1, Double.NaN, ""))
                .hasMessage("share must be from 0.0 to 1.0, was NaN");
        assertThatThrownBy(() -> Require.finite("angle", Double.NEGATIVE_INFINITY, "rad"))
                .hasMessageContaining("finite");
        assertThatThrownBy(() -> Require.atLeast("pole pairs", 1, 0))
                .hasMessage("pole pairs must be at least 1, was 0");
    }

    @Test
    void gives_back_what_is_fine() {
        assertThat(Require.positive("a", 1, "m")).isEqualTo(1);
        assertThat(Require.notNegative("a", 0, "m")).isZero();
        assertThat(Require.within("a", 0, 1, 1, "m")).isEqualTo(1);
        assertThat(Require.finite("a", -5, "m")).isEqualTo(-5);
        assertThat(Require.atLeast("a", 1, 2)).isEqualTo(2);
    }
}
