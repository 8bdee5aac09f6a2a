package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The closed form against the sums themselves, added up term by term. */
class HarmonicSumsTest {
    @ParameterizedTest(name = "{0} samples, {1} rad apart")
    @CsvSource({
        "1, 0.3",
        "7, 0.3",
        "500, 0.011",
        "501, 1.9",
        "4000, 0.000001",
        "400, 0.0000000001",
        "40, 3.1415926",
        "41, 3.1415926",
        "40, 2.0943951023931953",
        "64, 0.7853981633974483",
        "63, 0.7853981633974483"
    })
    void the_closed_form_is_the_sum(int count, double step) {
        HarmonicSums sums = HarmonicSums.even(26, step, count);
        for (int multiple = 0; multiple <= 26; multiple++) {
            double sum = 0;
            for (int i = 0; i < count; i++) {
                sum += Math.cos(multiple * step * (i - 0.5 * (count - 1)));
            }
            assertThat(sums.cosine(multiple)).as("multiple %d", multiple).isCloseTo(sum, within(1e-9 * count));
            assertThat(sums.sine(multiple)).isZero();
        }
    }
}
