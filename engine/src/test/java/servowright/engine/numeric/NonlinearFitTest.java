package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;

class NonlinearFitTest {
    private static final double[] TIMES = new double[200];

    static {
        Arrays.setAll(TIMES, i -> i * 0.01);
    }

    /** b0 (1 - exp(-t / b1)). */
    private static double[] rise(double[] b) {
        return Arrays.stream(TIMES).map(t -> b[0] * (1 - Math.exp(-t / b[1]))).toArray();
    }

    private static double[][] slopes(double[] b) {
        return new double[][] {
            Arrays.stream(TIMES).map(t -> 1 - Math.exp(-t / b[1])).toArray(),
            Arrays.stream(TIMES)
                    .map(t -> -b[0] * t / (b[1] * b[1]) * Math.exp(-t / b[1]))
                    .toArray()
        };
    }

    private static double[] noisyRise(RandomGenerator random, double sigma) {
        double[] observed = rise(new double[] {5, 0.4});
        for (int i = 0; i < observed.length; i++) {
            observed[i] += sigma * random.nextGaussian();
        }
        return observed;
    }

    @Test
    void given_derivatives_and_differences_lead_to_the_same_answer() {
        double[] observed = noisyRise(new SplittableRandom(1), 0.1);
        NonlinearFit differences = NonlinearFit.of(NonlinearFitTest::rise, observed, 1, 1);
        NonlinearFit given = NonlinearFit.of(
                NonlinearModel.withDerivatives(NonlinearFitTest::rise, NonlinearFitTest::slopes), observed, 1, 1);
        assertThat(differences.status()).isEqualTo(FitStatus.CONVERGED);
        for (int j = 0; j < 2; j++) {
            assertThat(differences.parameter(j)).isCloseTo(given.parameter(j), within(1e-9));
            assertThat(differences.standardError(j)).isCloseTo(given.standardError(j), within(1e-9));
        }
    }

    @Test
    void agrees_with_the_linear_fit_where_the_model_is_linear() {
        double[] sigma = new double[TIMES.length];
        Arrays.setAll(sigma, i -> 0.1 + TIMES[i]);
        double[] observed = noisyRise(new SplittableRandom(2), 0.1);
        NonlinearModel line =
                b -> Arrays.stream(TIMES).map(t -> b[0] + b[1] * t).toArray();
        LinearFit linear = LinearFit.withKnownSigma(Design.line(TIMES), observed, sigma);
        NonlinearFit fit = NonlinearFit.withKnownSigma(line, observed, sigma, 1, 1);
        assertThat(fit.parameter(1)).isCloseTo(linear.parameter(1), within(1e-9));
        assertThat(fit.standardError(0)).isCloseTo(linear.standardError(0), within(1e-9));
        assertThat(fit.residualSumOfSquares()).isCloseTo(linear.residualSumOfSquares(), within(1e-7));
        NonlinearFit relative = NonlinearFit.weighted(line, observed, sigma, 1, 1);
        assertThat(relative.standardError(1))
                .isCloseTo(
                        LinearFit.weighted(Design.line(TIMES), observed, sigma).standardError(1), within(1e-9));
    }

    @Test
    void intervals_hold_the_truth_in_about_95_of_100_fits() {
        int held = 0;
        int runs = 500;
        for (int seed = 1; seed <= runs; seed++) {
            NonlinearFit fit =
                    NonlinearFit.of(NonlinearFitTest::rise, noisyRise(new SplittableRandom(seed), 0.2), 3, 0.3);
            double factor = Quantile.coverageFactor(0.95, fit.effectiveDegreesOfFreedom());
            held += Math.abs(fit.parameter(1) - 0.4) <= factor * fit.standardError(1) ? 1 : 0;
        }
        assertThat(held / (double) runs).as("seeds 1 to %d", runs).isBetween(0.92, 0.98);
    }

    @Test
    void dependent_residuals_widen_the_answer() {
        RandomGenerator random = new SplittableRandom(6);
        double[] observed = rise(new double[] {5, 0.4});
        double error = 0;
        for (int i = 0; i < observed.length; i++) {
            error = 0.8 * error + random.nextGaussian();
            observed[i] += 0.05 * error;
        }
        NonlinearFit fit = NonlinearFit.of(NonlinearFitTest::rise, observed, 3, 0.3);
        NonlinearFit wider = fit.allowingForDependence();
        assertThat(wider.varianceFactor()).isGreaterThan(3);
        assertThat(wider.standardError(0)).isGreaterThan(1.7 * fit.standardError(0));
        assertThat(wider.effectiveDegreesOfFreedom()).isLessThan(fit.effectiveDegreesOfFreedom());
        assertThat(wider.allowingForDependence()).isSameAs(wider);
    }

    @Test
    void parameters_that_do_the_same_are_not_determined() {
        NonlinearModel twins =
                b -> Arrays.stream(TIMES).map(t -> (b[0] + b[1]) * t).toArray();
        NonlinearFit fit = NonlinearFit.of(twins, noisyRise(new SplittableRandom(3), 0.1), 1, 2);
        assertThat(fit.status()).isNotEqualTo(FitStatus.CONVERGED);
        assertThat(fit.standardError(0)).isNaN();
        assertThat(fit.allowingForDependence()).isSameAs(fit);
    }

    @Test
    void a_parameter_without_effect_is_not_determined() {
        NonlinearModel idle = b -> Arrays.stream(TIMES).map(t -> b[0] * t).toArray();
        assertThat(NonlinearFit.of(idle, noisyRise(new SplittableRandom(3), 0.1), 1, 2)
                        .status())
                .isEqualTo(FitStatus.NOT_DETERMINED);
    }

    @Test
    void a_start_outside_the_domain_is_an_ordinary_result() {
        NonlinearModel root =
                b -> Arrays.stream(TIMES).map(t -> Math.sqrt(t - b[0])).toArray();
        assertThat(NonlinearFit.of(root, noisyRise(new SplittableRandom(4), 0.1), 1)
                        .status())
                .isEqualTo(FitStatus.NOT_FINITE);
        assertThat(NonlinearFit.of(NonlinearFitTest::rise, new double[TIMES.length], 0, 1)
                        .status()
                        .reason())
                .isNotBlank();
        NonlinearFit few = NonlinearFit.of(b -> new double[] {b[0], b[1]}, new double[] {1, 2}, 0, 0);
        assertThat(few.status()).isEqualTo(FitStatus.TOO_FEW_OBSERVATIONS);
        assertThat(few.residualSd()).isNaN();
    }

    @Test
    void refuses_a_model_with_another_number_of_predictions() {
        assertThatThrownBy(() -> NonlinearFit.of(b -> new double[2], new double[] {1, 2, 3}, 1))
                .hasMessageContaining("predictions must have length 3");
    }
}
