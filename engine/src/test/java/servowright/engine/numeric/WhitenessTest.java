package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

class WhitenessTest {
    private static double[] firstOrder(double correlation, int count, long seed) {
        RandomGenerator random = new SplittableRandom(seed);
        double[] noise = new double[count];
        double last = random.nextGaussian() / Math.sqrt(1 - correlation * correlation);
        for (int i = 0; i < count; i++) {
            last = correlation * last + random.nextGaussian();
            noise[i] = last;
        }
        return noise;
    }

    @Test
    void white_noise_counts_in_full() {
        Whiteness whiteness = Whiteness.of(firstOrder(0, 100_000, 1));
        assertThat(whiteness.lagOneCorrelation()).isCloseTo(0, within(0.01));
        assertThat(whiteness.durbinWatson()).isCloseTo(2, within(0.02));
        assertThat(whiteness.varianceFactor()).isBetween(1.0, 1.05);
        assertThat(whiteness.effectiveCount()).isGreaterThan(95_000);
    }

    /** First-order process: factor (1 + r)/(1 - r) at frequency 0, (1 - r^2)/(1 - 2 r cos w + r^2) at w; textbook. */
    @Test
    void first_order_noise_has_its_textbook_factor() {
        Whiteness whiteness = Whiteness.of(firstOrder(0.8, 200_000, 2));
        assertThat(whiteness.lagOneCorrelation()).isCloseTo(0.8, within(0.01));
        assertThat(whiteness.durbinWatson()).isCloseTo(0.4, within(0.02));
        assertThat(whiteness.varianceFactor()).isCloseTo(9, within(0.9));
        double at = (1 - 0.64) / (1 - 1.6 * Math.cos(2 * Math.PI * 0.02) + 0.64);
        assertThat(whiteness.varianceFactorAt(0.02)).isCloseTo(at, within(0.1 * at));
        assertThat(whiteness.varianceFactorAt(0.5)).as("never below 1").isEqualTo(1);
    }

    @Test
    void alternating_noise_is_seen_where_it_lies() {
        Whiteness whiteness = Whiteness.of(firstOrder(-0.8, 200_000, 3));
        assertThat(whiteness.varianceFactor()).isEqualTo(1);
        assertThat(whiteness.varianceFactorAt(0.5)).isCloseTo(9, within(0.9));
    }

    @Test
    void few_or_no_residuals_are_white() {
        assertThat(Whiteness.of(new double[] {1}).varianceFactor()).isEqualTo(1);
        assertThat(Whiteness.of(new double[10]).durbinWatson()).isEqualTo(2);
    }
}
