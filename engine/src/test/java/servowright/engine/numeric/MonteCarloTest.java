package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The examples of JCGM 101:2008, section 9. Printed results from memory, checked against an independent run of 2e6
 * trials; the tolerances are several times the scatter of 1e6 trials.
 */
class MonteCarloTest {
    private static final int TRIALS = 1_000_000;
    private static final long SEED = 20080101;

    private static MonteCarlo sum(List<Distribution> inputs) {
        return MonteCarlo.propagate(x -> Arrays.stream(x).sum(), inputs, TRIALS, 0.95, new SplittableRandom(SEED));
    }

    private static Distribution rectangularOf(double standardUncertainty) {
        double half = Math.sqrt(3) * standardUncertainty;
        return Distribution.rectangular(-half, half);
    }

    @Test
    void agrees_with_jcgm_101_2008_9_2_2_four_normal() {
        MonteCarlo result = sum(Collections.nCopies(4, Distribution.normal(0, 1)));
        assertThat(result.mean()).isCloseTo(0, within(0.01));
        assertThat(result.standardUncertainty()).isCloseTo(2.00, within(0.01));
        assertThat(result.symmetric().low()).isCloseTo(-3.92, within(0.02));
        assertThat(result.symmetric().high()).isCloseTo(3.92, within(0.02));
        assertThat(result.shortest().width()).isCloseTo(7.84, within(0.03));
    }

    @Test
    void agrees_with_jcgm_101_2008_9_2_3_four_rectangular() {
        MonteCarlo result = sum(Collections.nCopies(4, rectangularOf(1)));
        assertThat(result.standardUncertainty()).isCloseTo(2.00, within(0.01));
        assertThat(result.symmetric().low()).isCloseTo(-3.88, within(0.02));
        assertThat(result.symmetric().high()).isCloseTo(3.88, within(0.02));
    }

    @Test
    void agrees_with_jcgm_101_2008_9_2_4_one_large_rectangle() {
        MonteCarlo result = sum(List.of(rectangularOf(1), rectangularOf(1), rectangularOf(1), rectangularOf(10)));
        assertThat(result.standardUncertainty()).isCloseTo(10.1, within(0.06));
        assertThat(result.symmetric().low()).isCloseTo(-17.0, within(0.06));
        assertThat(result.symmetric().high()).isCloseTo(17.0, within(0.06));
    }

    /** Deviation of a mass from nominal, mg: air buoyancy on weights of two densities. */
    private static double mass(double[] x) {
        return (x[0] + x[1]) * (1 + (x[2] - 1.2) * (1 / x[3] - 1 / x[4])) - 100_000;
    }

    @Test
    void agrees_with_jcgm_101_2008_9_3_mass() {
        MonteCarlo result = MonteCarlo.propagate(
                MonteCarloTest::mass,
                List.of(
                        Distribution.normal(100_000, 0.050),
                        Distribution.normal(1.234, 0.020),
                        Distribution.rectangular(1.10, 1.30),
                        Distribution.rectangular(7000, 9000),
                        Distribution.rectangular(7950, 8050)),
                TRIALS,
                0.95,
                new SplittableRandom(SEED));
        assertThat(result.mean()).isCloseTo(1.2340, within(0.0005));
        assertThat(result.standardUncertainty()).as("printed 0.0754").isCloseTo(0.0754, within(0.0003));
        assertThat(result.shortest().low()).as("printed 1.0834").isCloseTo(1.0834, within(0.003));
        assertThat(result.shortest().high()).as("printed 1.3825").isCloseTo(1.3825, within(0.003));
        double[] at = {100_000, 1.234, 1.2, 8000, 8000};
        double[] u = {0.050, 0.020, 0.1 / Math.sqrt(3), 1000 / Math.sqrt(3), 50 / Math.sqrt(3)};
        double linear = Math.sqrt(Covariance.independent(u).varianceOf(Derivative.gradient(MonteCarloTest::mass, at)));
        assertThat(linear).as("first order misses the product of two inputs").isCloseTo(0.0539, within(0.0001));
    }

    @ParameterizedTest(name = "x1 = {0}")
    @CsvSource({
        "0,     5.00e-5, 5.00e-5, 0,       1.50e-4",
        "0.010, 1.50e-4, 1.12e-4, 0,       3.67e-4",
        "0.050, 2.55e-3, 5.02e-4, 1.59e-3, 3.54e-3"
    })
    void agrees_with_jcgm_101_2008_9_4_comparison_loss(double x1, double mean, double u, double low, double high) {
        MonteCarlo result = MonteCarlo.propagate(
                x -> x[0] * x[0] + x[1] * x[1],
                List.of(Distribution.multivariateNormal(new double[] {x1, 0}, Covariance.independent(0.005, 0.005))),
                TRIALS,
                0.95,
                new SplittableRandom(SEED));
        assertThat(result.mean()).isCloseTo(mean, within(0.005 * mean));
        assertThat(result.standardUncertainty()).isCloseTo(u, within(0.01 * u));
        assertThat(result.shortest().low()).isCloseTo(low, within(0.05 * u));
        assertThat(result.shortest().high()).isCloseTo(high, within(0.05 * u));
    }

    /** Deviation of an end gauge from 50 mm, nm; the full model of the standard, not its first-order form. */
    private static double endGauge(double[] x) {
        double temperature = x[5] + x[6];
        double standard = x[0] * (1 + x[4] * (temperature - x[8]));
        return (standard + x[1] + x[2] + x[3]) / (1 + (x[4] + x[7]) * temperature) - 50_000_000;
    }

    @Test
    void agrees_with_jcgm_101_2008_9_5_end_gauge() {
        MonteCarlo result = MonteCarlo.propagate(
                MonteCarloTest::endGauge,
                List.of(
                        Distribution.studentT(50_000_623, 25, 18),
                        Distribution.studentT(215, 6, 24),
                        Distribution.studentT(0, 4, 5),
                        Distribution.studentT(0, 7, 8),
                        Distribution.rectangular(9.5e-6, 13.5e-6),
                        Distribution.normal(-0.1, 0.2),
                        Distribution.arcsine(-0.5, 0.5),
                        Distribution.curvilinearTrapezoid(-1e-6, 1e-6, 0.1e-6),
                        Distribution.curvilinearTrapezoid(-0.050, 0.050, 0.025)),
                TRIALS,
                0.99,
                new SplittableRandom(SEED));
        assertThat(result.mean()).isCloseTo(838, within(0.5));
        assertThat(result.standardUncertainty()).isCloseTo(36, within(0.5));
        assertThat(result.shortest().low()).as("printed 745").isCloseTo(745, within(3.0));
        assertThat(result.shortest().high()).as("printed 932").isCloseTo(932, within(3.0));
    }

    @Test
    void correlated_draws_have_the_covariance_asked_for() {
        Covariance wanted = Covariance.of(new double[][] {{4, -1.8, 0}, {-1.8, 1, 0}, {0, 0, 0}});
        SplittableRandom random = new SplittableRandom(SEED);
        Distribution joint = Distribution.multivariateNormal(new double[] {1, 2, 3}, wanted);
        double[][] drawn = new double[3][200_000];
        double[] one = new double[3];
        for (int i = 0; i < drawn[0].length; i++) {
            joint.draw(random, one, 0);
            for (int j = 0; j < 3; j++) {
                drawn[j][i] = one[j];
            }
        }
        Covariance found = Statistics.covariance(drawn);
        assertThat(found.at(0, 0)).isCloseTo(4, within(0.05));
        assertThat(found.correlation(0, 1)).isCloseTo(-0.9, within(0.003));
        assertThat(drawn[2]).containsOnly(3);
    }

    @Test
    void shapes_have_their_textbook_spread() {
        // Half-width a: rectangle a/sqrt(3), triangle a/sqrt(6), arcsine a/sqrt(2); t: sqrt(nu/(nu-2)) [JCGM 101, 6.4].
        assertThat(spread(Distribution.rectangular(-1, 1))).isCloseTo(1 / Math.sqrt(3), within(0.003));
        assertThat(spread(Distribution.triangular(-1, 1))).isCloseTo(1 / Math.sqrt(6), within(0.003));
        assertThat(spread(Distribution.arcsine(-1, 1))).isCloseTo(1 / Math.sqrt(2), within(0.003));
        assertThat(spread(Distribution.studentT(0, 1, 10))).isCloseTo(Math.sqrt(10 / 8.0), within(0.01));
        assertThat(spread(Distribution.curvilinearTrapezoid(-1, 1, 0.5)))
                .as("sqrt(w^2/3 + d^2/9), half-width w, inexactness d")
                .isCloseTo(Math.sqrt(1 / 3.0 + 0.25 / 9), within(0.003));
    }

    private static double spread(Distribution distribution) {
        return MonteCarlo.propagate(x -> x[0], List.of(distribution), 400_000, 0.95, new SplittableRandom(SEED))
                .standardUncertainty();
    }

    @Test
    void the_same_seed_gives_the_same_figures() {
        assertThat(sum(List.of(rectangularOf(1)))).isEqualTo(sum(List.of(rectangularOf(1))));
    }
}
