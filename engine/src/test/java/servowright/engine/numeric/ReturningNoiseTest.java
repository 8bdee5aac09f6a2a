package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Fits of derivatives over windows, drawn again and again: the stated variance is that of the draws (seeded, no source needed). */
class ReturningNoiseTest {
    private static final int SAMPLES = 30;
    private static final int COUNT = 6000;
    private static final int DRAWS = 400;

    /** Mean squared error of the slope and mean stated variance, with noise of the signal and noise that only its derivative has. */
    private static double[] drawn(double noise, double added) {
        double[] times = IntStream.range(0, COUNT).mapToDouble(i -> 1e-3 * i).toArray();
        double squares = 0;
        double stated = 0;
        for (int draw = 0; draw < DRAWS; draw++) {
            Random random = new Random(3300 + draw);
            double[] signal =
                    Arrays.stream(times).map(t -> noise * random.nextGaussian()).toArray();
            double[] more =
                    Arrays.stream(times).map(t -> added * random.nextGaussian()).toArray();
            SmoothWindows windows = SmoothWindows.over(times, SAMPLES);
            double[] observed = windows.slopes(signal);
            double[] means = windows.means(more);
            for (int k = 0; k < observed.length; k++) {
                observed[k] += means[k];
            }
            double[] wave =
                    Arrays.stream(windows.middles()).map(t -> Math.sin(5 * t)).toArray();
            Design design = Design.ofColumns(wave);
            LinearFit fit = LinearFit.of(design, observed);
            int[] positions = IntStream.range(0, observed.length).toArray();
            squares += fit.parameter(0) * fit.parameter(0) / DRAWS;
            stated += ReturningNoise.of(design, fit, positions).at(0, 0) / DRAWS;
        }
        return new double[] {squares, stated};
    }

    @Test
    void states_the_variance_of_noise_that_returns_of_noise_that_adds_up_and_of_both() {
        for (double added : new double[] {0, 10, 100, 1000}) {
            double[] both = drawn(1, added);
            // 400 draws tell a variance to 7 %, and a variance that cannot be negative comes out somewhat large.
            assertThat(both[1] / both[0]).as("added %s", added).isBetween(0.8, 1.35);
        }
    }

    @Test
    void tells_a_correlation_of_a_half_against_the_next() {
        double[] times = IntStream.range(0, COUNT).mapToDouble(i -> 1e-3 * i).toArray();
        Random random = new Random(1);
        SmoothWindows windows = SmoothWindows.over(times, SAMPLES);
        double[] slopes = windows.slopes(
                Arrays.stream(times).map(t -> random.nextGaussian()).toArray());
        double[] ones = new double[slopes.length];
        Arrays.fill(ones, 1);
        LinearFit fit = LinearFit.of(Design.ofColumns(ones), slopes);
        int[] positions = IntStream.range(0, slopes.length).toArray();
        assertThat(ReturningNoise.correlation(fit, positions)).isBetween(-0.6, -0.4);
    }

    /** Rows that are never neighbours are independent: the covariance is that of the fit itself. */
    @Test
    void takes_rows_without_neighbours_for_independent() {
        Random random = new Random(2);
        double[] ones = new double[60];
        Arrays.fill(ones, 1);
        double[] noise = Arrays.stream(ones).map(o -> random.nextGaussian()).toArray();
        Design design = Design.ofColumns(ones);
        LinearFit fit = LinearFit.of(design, noise);
        int[] apart = IntStream.range(0, 60).map(k -> 3 * k).toArray();
        double ratio = ReturningNoise.of(design, fit, apart).at(0, 0)
                / fit.covariance().at(0, 0);
        assertThat(ratio).isBetween(1 - 1e-9, 1 + 1e-9);
        assertThat(ReturningNoise.correlation(fit, apart)).isZero();
    }
}
