package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

/** Roots, minima, derivatives and spectra of functions whose answer is known in closed form. */
class CurveTest {
    @Test
    void finds_a_root_to_the_last_digits() {
        assertThat(Roots.between(x -> x * x - 2, 0, 2, 1e-15).orElseThrow()).isCloseTo(Math.sqrt(2), within(1e-14));
        assertThat(Roots.between(x -> x, 0, 1, 1e-12).orElseThrow()).isZero();
    }

    @Test
    void no_change_of_sign_is_no_root() {
        assertThat(Roots.between(x -> x * x + 1, -1, 1, 1e-12)).isEmpty();
        assertThat(Roots.between(x -> Double.NaN, -1, 1, 1e-12)).isEmpty();
        assertThatThrownBy(() -> Roots.between(x -> x, 1, -1, 1e-12)).hasMessageContaining("low < high");
    }

    /** x³ at 2: slope 12, and by central differences h² more, exactly. */
    @Test
    void central_differences_err_by_the_square_of_their_step() {
        double[][] columns = Derivative.central(v -> new double[] {v[0] * v[0] * v[0], v[1]}, new double[] {2, 5}, 0.1);
        assertThat(columns[0]).containsExactly(new double[] {12.01, 0}, within(1e-12));
        assertThat(columns[1]).containsExactly(new double[] {0, 1}, within(1e-12));
    }

    @Test
    void finds_a_minimum_to_half_the_digits() {
        Minimum minimum = Minimum.between(x -> Math.cosh(x - 0.3) + 2, -5, 5).orElseThrow();
        assertThat(minimum.at()).isCloseTo(0.3, within(1e-7));
        assertThat(minimum.value()).isCloseTo(3, within(1e-14));
        assertThat(Minimum.between(x -> Double.NaN, 0, 1)).isEmpty();
    }

    @Test
    void derivatives_are_good_to_ten_digits() {
        assertThat(Derivative.of(Math::exp, 1, 0.1)).isCloseTo(Math.E, within(1e-11));
        assertThat(Derivative.of(x -> Math.sin(1000 * x), 0.2, 1e-3)).isCloseTo(1000 * Math.cos(200), within(1e-7));
        double[] gradient = Derivative.gradient(x -> x[0] * x[0] * x[1], new double[] {3, 0});
        assertThat(gradient[0]).isZero();
        assertThat(gradient[1]).isCloseTo(9, within(1e-10));
    }

    @Test
    void the_strongest_line_is_found_for_any_number_of_samples() {
        for (int count : new int[] {50, 64, 1000, 1777}) {
            double[] samples = new double[count];
            for (int i = 0; i < count; i++) {
                samples[i] = 40 + 0.01 * i + Math.sin(2 * Math.PI * 0.137 * i) + 0.5 * Math.sin(2 * Math.PI * 0.31 * i);
            }
            assertThat(Spectrum.peakFrequency(samples, 2).orElseThrow())
                    .isCloseTo(0.137 / 2, within(0.1 / (2.0 * count)));
        }
        assertThat(Spectrum.peakFrequency(new double[] {1, 1, 1, 1, 1}, 1)).isEmpty();
        assertThat(Spectrum.peakFrequency(new double[] {1, 2}, 1)).isEmpty();
    }

    @Test
    void the_transform_agrees_with_its_definition() {
        RandomGenerator random = new SplittableRandom(7);
        double[] real = random.doubles(16).toArray();
        double[] imaginary = random.doubles(16).toArray();
        double[] foundReal = real.clone();
        double[] foundImaginary = imaginary.clone();
        Spectrum.transform(foundReal, foundImaginary);
        for (int k = 0; k < 16; k++) {
            double sumReal = 0;
            double sumImaginary = 0;
            for (int i = 0; i < 16; i++) {
                double angle = -2 * Math.PI * k * i / 16;
                sumReal += real[i] * Math.cos(angle) - imaginary[i] * Math.sin(angle);
                sumImaginary += real[i] * Math.sin(angle) + imaginary[i] * Math.cos(angle);
            }
            assertThat(foundReal[k]).isCloseTo(sumReal, within(1e-13));
            assertThat(foundImaginary[k]).isCloseTo(sumImaginary, within(1e-13));
        }
    }

    @Test
    void values_and_covariances_do_not_change_and_compare_by_content() {
        double[] numbers = {1, 2};
        Values values = Values.of(numbers);
        numbers[0] = 9;
        values.toArray()[1] = 9;
        assertThat(values)
                .isEqualTo(Values.of(1, 2))
                .hasSameHashCodeAs(Values.of(1, 2))
                .hasToString("[1.0, 2.0]");
        Covariance covariance = Covariance.independent(1, 2);
        covariance.toRows()[0][0] = 9;
        assertThat(covariance).isEqualTo(Covariance.of(new double[][] {{1, 0}, {0, 4}}));
        assertThat(covariance).hasSameHashCodeAs(Covariance.independent(1, 2)).isNotEqualTo(values);
        assertThat(covariance.toString()).contains("4.0");
        assertThat(Values.of(new double[30]).toString()).contains("30");
        assertThatThrownBy(() -> Covariance.of(new double[][] {{1, 2}, {2, 1}}).lowerTriangle())
                .hasMessageContaining("positive semidefinite");
    }
}
