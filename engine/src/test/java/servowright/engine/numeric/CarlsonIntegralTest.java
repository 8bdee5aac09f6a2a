package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CarlsonIntegralTest {

    @Test
    void agrees_with_carlson_1995_section_3() {
        // Published test values, from memory, 14 digits.
        assertThat(CarlsonIntegral.first(1, 2, 0)).isCloseTo(1.3110287771461, within(1e-13));
        assertThat(CarlsonIntegral.second(0, 2, 1)).isCloseTo(1.7972103521034, within(1e-13));
        assertThat(CarlsonIntegral.third(0, 1, 2, 3)).isCloseTo(0.77688623778582, within(1e-14));
        assertThat(CarlsonIntegral.third(2, 3, 4, 5)).isCloseTo(0.14297579667157, within(1e-14));
    }

    @Test
    void gives_the_circle_where_the_modulus_vanishes() {
        assertThat(CarlsonIntegral.first(0, 1, 1)).isCloseTo(Math.PI / 2, within(1e-15));
    }

    @Test
    void refuses_two_zeros_a_negative_a_nan_and_a_vanishing_parameter() {
        assertThatIllegalArgumentException().isThrownBy(() -> CarlsonIntegral.first(0, 0, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CarlsonIntegral.first(-1, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CarlsonIntegral.first(Double.NaN, 1, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> CarlsonIntegral.first(1, 1, Double.POSITIVE_INFINITY));
        assertThatIllegalArgumentException().isThrownBy(() -> CarlsonIntegral.second(1, 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> CarlsonIntegral.third(1, 1, 1, 0));
    }
}
