package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.distribution.continuous.TDistribution;
import org.junit.jupiter.api.Test;

class StatisticsTest {
    private static final double[] SMALL = {2, 4, 4, 4, 5, 5, 7, 9};

    @Test
    void simple_sample_by_hand() {
        assertThat(Statistics.mean(SMALL)).isEqualTo(5);
        assertThat(Statistics.variance(SMALL)).isCloseTo(32 / 7.0, within(1e-15));
        assertThat(Statistics.standardError(SMALL)).isCloseTo(Math.sqrt(4 / 7.0), within(1e-15));
        assertThat(Statistics.median(SMALL)).isEqualTo(4.5);
        assertThat(Statistics.medianAbsoluteDeviation(SMALL)).isEqualTo(0.5);
        assertThat(Statistics.rootMeanSquare(3, 4)).isCloseTo(Math.sqrt(12.5), within(1e-15));
        assertThat(Statistics.quantile(SMALL, 0.25)).isEqualTo(4);
        assertThat(Statistics.quantile(SMALL, 1)).isEqualTo(9);
    }

    /** NIST StRD NumAcc4 [mem]: 1001 values 10000000.2 and alternating .1, .3; standard deviation 0.1, lag 1 about -0.999. */
    @Test
    void a_large_mean_does_not_spoil_the_spread() {
        double[] sample = new double[1001];
        for (int i = 0; i < sample.length; i++) {
            sample[i] = i == 0 ? 10_000_000.2 : i % 2 == 1 ? 10_000_000.1 : 10_000_000.3;
        }
        assertThat(Statistics.mean(sample)).isCloseTo(10_000_000.2, within(2e-9));
        assertThat(StrdFile.digits(Statistics.standardDeviation(sample), 0.1, 15))
                .isGreaterThan(7.5);
        assertThat(Statistics.autocorrelation(sample, 1)).isCloseTo(-0.999, within(1e-6));
    }

    @Test
    void correlation_of_straight_lines_is_one() {
        assertThat(Statistics.correlation(new double[] {1, 2, 3}, new double[] {5, 7, 9}))
                .isCloseTo(1, within(1e-15));
        assertThat(Statistics.correlation(new double[] {1, 2, 3}, new double[] {-1, -2, -3}))
                .isCloseTo(-1, within(1e-15));
        assertThat(Statistics.correlation(new double[] {1, 2, 3}, new double[] {4, 4, 4}))
                .isNaN();
    }

    @Test
    void the_robust_spread_does_not_see_an_outlier() {
        double[] sample = new double[999];
        for (int i = 0; i < sample.length; i++) {
            sample[i] = Quantile.normal((i + 1) / 1000.0);
        }
        sample[0] = -1e6;
        assertThat(Statistics.robustStandardDeviation(sample)).isCloseTo(1, within(0.01));
    }

    @Test
    void refuses_an_empty_sample_and_nan() {
        assertThatThrownBy(() -> Statistics.mean()).hasMessageContaining("at least 1");
        assertThatThrownBy(() -> Statistics.variance(1)).hasMessageContaining("at least 2");
        assertThatThrownBy(() -> Statistics.median(1, Double.NaN)).hasMessageContaining("index 1");
        assertThatThrownBy(() -> Statistics.quantile(SMALL, 1.1)).hasMessageContaining("from 0 to 1");
        assertThatThrownBy(() -> Statistics.covariance(SMALL, new double[] {1})).hasMessageContaining("length 8");
    }

    /** Tables of any statistics book, from memory. */
    @Test
    void quantiles_agree_with_the_tables() {
        assertThat(Quantile.normal(0.975)).isCloseTo(1.959964, within(1e-6));
        assertThat(Quantile.studentT(0.975, 10)).isCloseTo(2.228139, within(1e-6));
        assertThat(Quantile.studentT(0.025, 10)).isCloseTo(-2.228139, within(1e-6));
        assertThat(Quantile.studentT(0.975, 1)).isCloseTo(12.7062, within(1e-4));
        assertThat(Quantile.studentT(0.975, Double.POSITIVE_INFINITY)).isCloseTo(1.959964, within(1e-6));
        assertThat(Quantile.studentT(0.975, 1e8)).isCloseTo(1.959964, within(1e-6));
        assertThat(Quantile.chiSquared(0.95, 10)).isCloseTo(18.307, within(1e-3));
        assertThat(Quantile.coverageFactor(0.9545, 10))
                .as("JCGM 100 table G.2: 2.28")
                .isCloseTo(2.28, within(5e-3));
    }

    @Test
    void intervals_of_a_lopsided_sample() {
        double[] sample = new double[10_000];
        for (int i = 0; i < sample.length; i++) {
            sample[i] = -Math.log(1 - (i + 0.5) / sample.length);
        }
        Interval shortest = Interval.shortest(sample, 0.95);
        assertThat(shortest.low()).as("an exponential density is highest at 0").isCloseTo(0, within(1e-3));
        assertThat(shortest.high()).isCloseTo(-Math.log(0.05), within(5e-3));
        Interval symmetric = Interval.symmetric(sample, 0.95);
        assertThat(symmetric.low()).isCloseTo(-Math.log(0.975), within(1e-3));
        assertThat(symmetric.high()).isCloseTo(-Math.log(0.025), within(1e-2));
        assertThat(symmetric.width()).isGreaterThan(shortest.width());
        assertThat(shortest.contains(1)).isTrue();
        assertThat(shortest.contains(4)).isFalse();
    }

    /** Reference: the distribution of the library, whose value at the quantile must be the probability. */
    @Test
    void student_quantiles_invert_the_distribution() {
        for (double freedom : new double[] {1.5, 4.9, 5, 6.3, 12, 40, 1000, 3e5, 1e8}) {
            TDistribution student = new TDistribution(freedom);
            for (double p : new double[] {0.6, 0.841, 0.9, 0.975, 0.9985, 0.999999}) {
                assertThat(student.cumulativeProbability(Quantile.studentT(p, freedom)))
                        .as("%s with %s degrees of freedom", p, freedom)
                        .isCloseTo(p, within(freedom < 1e4 ? 1e-10 : 1e-8));
            }
        }
    }
}
