package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CompleteEllipticTest {
    @Test
    void agrees_with_the_lemniscate_constant() {
        // K(1/2) = Γ(1/4)²/(4 √π) = 1.8540746773013719 (recalled), and D = (K − E)/k².
        CompleteElliptic half = CompleteElliptic.of(Math.sqrt(0.5), 1);
        assertThat(half.first()).isCloseTo(1.8540746773013719, within(1e-15));
        assertThat(half.second()).isCloseTo((1.8540746773013719 - 1.3506438810476755) / 0.5, within(1e-14));
        assertThat(half.third()).as("n = 0").isCloseTo(half.first(), within(1e-15));
    }

    @ParameterizedTest
    @CsvSource({"0.99, 0.9", "0.5, 0.5", "0.3, 0.001", "0.01, 1e-6", "1e-6, 0.2", "0.9, 1e-12", "1, 1", "0.7, 3"})
    void agrees_with_the_symmetric_forms(double modulus, double characteristic) {
        double kc2 = modulus * modulus;
        double first = CarlsonIntegral.first(0, kc2, 1);
        double second = CarlsonIntegral.second(0, kc2, 1) / 3;
        double third = first + (1 - characteristic) / 3 * CarlsonIntegral.third(0, kc2, 1, characteristic);
        CompleteElliptic all = CompleteElliptic.of(modulus, characteristic);
        assertThat(all.first()).isCloseTo(first, within(1e-13 * first));
        assertThat(all.second()).isCloseTo(second, within(1e-13 * second));
        assertThat(all.third()).isCloseTo(third, within(1e-12 * third));
    }

    @Test
    void refuses_where_an_integral_has_no_bound() {
        assertThatIllegalArgumentException().isThrownBy(() -> CompleteElliptic.of(0, 0.5));
        assertThatIllegalArgumentException().isThrownBy(() -> CompleteElliptic.of(0.5, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> CompleteElliptic.of(Double.NaN, 0.5));
    }
}
