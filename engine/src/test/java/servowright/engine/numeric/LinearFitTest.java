package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LinearFitTest {
    private static final double[] X = {1, 2, 3, 4};

    @Test
    void a_weight_counts_like_repeated_observations() {
        LinearFit weighted =
                LinearFit.weighted(Design.line(X), new double[] {1, 3, 2, 5}, new double[] {1, 1, 1 / Math.sqrt(2), 1});
        LinearFit repeated = LinearFit.of(Design.line(new double[] {1, 2, 3, 3, 4}), new double[] {1, 3, 2, 2, 5});
        assertThat(weighted.parameter(0)).isCloseTo(repeated.parameter(0), within(1e-13));
        assertThat(weighted.parameter(1)).isCloseTo(repeated.parameter(1), within(1e-13));
        assertThat(weighted.residualSumOfSquares()).isCloseTo(repeated.residualSumOfSquares(), within(1e-13));
        assertThat(weighted.rSquared()).isCloseTo(repeated.rSquared(), within(1e-13));
    }

    @Test
    void a_known_sigma_fixes_the_covariance_whatever_the_residuals() {
        double[] sigma = {0.1, 0.1, 0.1, 0.1};
        LinearFit fits = LinearFit.withKnownSigma(Design.line(X), new double[] {1, 2, 3, 4}, sigma);
        LinearFit misfits = LinearFit.withKnownSigma(Design.line(X), new double[] {1, 9, -3, 4}, sigma);
        assertThat(misfits.covariance()).isEqualTo(fits.covariance());
        // sigma / sqrt(sum (x - mean)^2), by hand
        assertThat(fits.standardError(1)).isCloseTo(0.1 / Math.sqrt(5), within(1e-15));
        assertThat(misfits.residualSumOfSquares()).isGreaterThan(1000);
    }

    @Test
    void two_points_of_known_sigma_make_a_line() {
        LinearFit fit = LinearFit.withKnownSigma(
                Design.line(new double[] {0, 10}), new double[] {1, 21}, new double[] {0.3, 0.4});
        assertThat(fit.status().converged()).isTrue();
        assertThat(fit.parameter(1)).isCloseTo(2, within(1e-14));
        assertThat(fit.standardError(1)).isCloseTo(0.05, within(1e-15));
        assertThat(fit.residualSd()).isNaN();
    }

    @Test
    void what_cannot_be_determined_is_an_ordinary_result() {
        LinearFit same = LinearFit.of(Design.line(new double[] {7, 7, 7, 7}), new double[] {1, 2, 3, 4});
        assertThat(same.status()).isEqualTo(FitStatus.NOT_DETERMINED);
        assertThat(same.parameter(1)).isNaN();
        assertThat(LinearFit.of(Design.line(new double[] {1, 2}), new double[] {1, 2})
                        .status())
                .isEqualTo(FitStatus.TOO_FEW_OBSERVATIONS);
        assertThat(same.allowingForDependence()).isSameAs(same);
    }

    @Test
    void refuses_what_can_only_be_a_mistake() {
        assertThatThrownBy(() -> LinearFit.of(Design.line(X), new double[] {1, 2}))
                .hasMessageContaining("length 4");
        assertThatThrownBy(() -> LinearFit.of(Design.line(X), new double[] {1, Double.NaN, 3, 4}))
                .hasMessageContaining("index 1");
        assertThatThrownBy(() -> LinearFit.weighted(Design.line(X), X, new double[] {1, 0, 1, 1}))
                .hasMessageContaining("above 0");
        assertThatThrownBy(() -> Design.ofColumns(X, new double[] {1})).hasMessageContaining("length 4");
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.5, 0.9})
    void intervals_of_a_line_hold_when_residuals_depend_on_their_neighbours(double correlation) {
        int runs = 500;
        int slopeHeld = 0;
        int startHeld = 0;
        double[] x = new double[1000];
        for (int i = 0; i < x.length; i++) {
            x[i] = i / 1000.0;
        }
        for (int seed = 1; seed <= runs; seed++) {
            RandomGenerator random = new SplittableRandom(seed);
            double[] y = new double[x.length];
            double error = random.nextGaussian() / Math.sqrt(1 - correlation * correlation);
            for (int i = 0; i < y.length; i++) {
                error = correlation * error + random.nextGaussian();
                y[i] = 2 - 3 * x[i] + 0.1 * error;
            }
            LinearFit fit = LinearFit.of(Design.line(x), y).allowingForDependence();
            double factor = Quantile.coverageFactor(0.95, fit.effectiveDegreesOfFreedom());
            startHeld += Math.abs(fit.parameter(0) - 2) <= factor * fit.standardError(0) ? 1 : 0;
            slopeHeld += Math.abs(fit.parameter(1) + 3) <= factor * fit.standardError(1) ? 1 : 0;
        }
        assertThat(slopeHeld / (double) runs).as("slope, seeds 1 to %d", runs).isBetween(0.92, 0.98);
        assertThat(startHeld / (double) runs)
                .as("intercept, seeds 1 to %d", runs)
                .isBetween(0.92, 0.98);
    }
}
