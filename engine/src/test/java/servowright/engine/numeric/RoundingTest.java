package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

class RoundingTest {
    private static double[] sine(double amplitude, double centre, double noise, double step, long seed) {
        RandomGenerator random = new SplittableRandom(seed);
        double[] samples = new double[20_000];
        for (int i = 0; i < samples.length; i++) {
            double value = centre + amplitude * Math.sin(0.6180339887 * i) + noise * random.nextGaussian();
            samples[i] = step * Math.rint(value / step);
        }
        return samples;
    }

    /** Root mean square over amplitudes and centres of the amplitude error of many rounded sines, against the formula. */
    private static double observed(double steps, double noise) {
        double sum = 0;
        int runs = 200;
        for (int seed = 1; seed <= runs; seed++) {
            RandomGenerator random = new SplittableRandom(-seed);
            double amplitude = steps + 2 * random.nextDouble();
            HarmonicTerms known = HarmonicTerms.ofOrders(1).atKnownFrequency(0.6180339887 / (2 * Math.PI));
            double[] samples = sine(amplitude, random.nextDouble(), noise, 1, seed);
            double error = HarmonicFit.ofSamples(known, samples, 1).harmonic(1).amplitude() - amplitude;
            sum += error * error;
        }
        return Math.sqrt(sum / runs);
    }

    @Test
    void the_error_of_a_noiseless_sine_is_as_large_as_said() {
        for (double steps : new double[] {5, 20, 100}) {
            double said = new Rounding(1, 0).amplitudeUncertainty(steps + 1);
            assertThat(observed(steps, 0)).as("%s steps", steps).isBetween(0.85 * said, 1.15 * said);
        }
    }

    @Test
    void noise_of_half_a_step_takes_it_away() {
        assertThat(new Rounding(1, 0.5).amplitudeUncertainty(20))
                .isLessThan(0.01 * new Rounding(1, 0).amplitudeUncertainty(20));
        assertThat(observed(20, 0.5)).isLessThan(0.02);
    }

    @Test
    void noise_is_what_the_residuals_hold_beyond_the_rounding() {
        assertThat(Rounding.withResiduals(1, Math.sqrt(0.04 + 1 / 12.0)).noise())
                .isCloseTo(0.2, within(1e-12));
        assertThat(Rounding.withResiduals(1, 0.1).noise()).isZero();
    }

    @Test
    void finds_the_step_of_rounded_samples() {
        assertThat(Rounding.stepOf(sine(3, 0.1, 0.02, 0.04, 1)).orElseThrow()).isCloseTo(0.04, within(1e-12));
        assertThat(Rounding.stepOf(new double[] {1, 1, 3, 3, 1, 3}).orElseThrow())
                .isEqualTo(2);
    }

    @Test
    void finds_none_where_there_is_none() {
        RandomGenerator random = new SplittableRandom(1);
        assertThat(Rounding.stepOf(random.doubles(1000).toArray())).isEmpty();
        assertThat(Rounding.stepOf(new double[] {1, 1, 1})).isEmpty();
        assertThat(Rounding.stepOf(new double[] {0, 0, 0, 1, 1, 2.5, 2.5, 0, 1}))
                .isEmpty();
    }
}
