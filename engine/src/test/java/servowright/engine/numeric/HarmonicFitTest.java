package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import java.util.random.RandomGenerator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Synthetic signals whose true figures stand in each test. */
class HarmonicFitTest {
    private static final int RUNS = 500;

    private static final HarmonicTerms ORDERS = HarmonicTerms.ofOrders(1, 5, 7);

    /** 3 + 10 sin(x + 0.7) + 0.5 sin(5x - 2.4) + 0.2 sin(7x + 1.1), over this many periods. */
    private static double[] signal(int count, double periods) {
        double[] signal = new double[count];
        for (int i = 0; i < count; i++) {
            double x = 2 * Math.PI * periods * i / count;
            signal[i] = 3 + 10 * Math.sin(x + 0.7) + 0.5 * Math.sin(5 * x - 2.4) + 0.2 * Math.sin(7 * x + 1.1);
        }
        return signal;
    }

    private static void finds(HarmonicFit fit, double frequency, double tolerance) {
        assertThat(fit.status()).isEqualTo(FitStatus.CONVERGED);
        assertThat(fit.frequency()).isCloseTo(frequency, within(tolerance * frequency));
        assertThat(fit.offset()).isCloseTo(3, within(10 * tolerance));
        assertThat(fit.harmonic(1).amplitude()).isCloseTo(10, within(10 * tolerance));
        assertThat(fit.harmonic(1).phase()).isCloseTo(0.7, within(10 * tolerance));
        assertThat(fit.harmonic(5).amplitude()).isCloseTo(0.5, within(10 * tolerance));
        assertThat(fit.harmonic(5).phase()).isCloseTo(-2.4, within(100 * tolerance));
        assertThat(fit.harmonic(7).amplitude()).isCloseTo(0.2, within(10 * tolerance));
        assertThat(fit.harmonic(7).phase()).isCloseTo(1.1, within(100 * tolerance));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.5, 1.77, 2, 3.3, 7.9, 8.2, 20.37, 333.3, 2500.2})
    void finds_the_true_figures_for_any_number_of_periods(double periods) {
        int count = 40_000;
        double interval = 2e-5;
        double frequency = periods / (count * interval);
        finds(HarmonicFit.ofSamples(ORDERS, signal(count, periods), interval), frequency, 1e-9);
    }

    @Test
    void finds_them_with_a_drift_too() {
        double[] signal = signal(5000, 2.3);
        for (int i = 0; i < signal.length; i++) {
            signal[i] += 4e-4 * i;
        }
        HarmonicFit fit = HarmonicFit.ofSamples(ORDERS.withDrift(), signal, 1e-3);
        finds(fit, 0.46, 1e-9);
        assertThat(fit.drift()).isCloseTo(0.4, within(1e-8));
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.7, 2.3, 11.4})
    void finds_them_beside_a_line_of_another_frequency(double periods) {
        int count = 5000;
        double[] signal = signal(count, periods);
        double hertz = 1.31 * periods;
        for (int i = 0; i < count; i++) {
            signal[i] += 2 * Math.sin(2 * Math.PI * hertz * i / count - 0.4);
        }
        HarmonicFit fit =
                HarmonicFit.ofSamples(ORDERS.startingAt(1.02 * periods).withLine(hertz), signal, 1.0 / count);
        finds(fit, periods, 1e-9);
        assertThat(fit.line().orElseThrow().amplitude()).isCloseTo(2, within(1e-8));
        assertThat(fit.line().orElseThrow().phase()).isCloseTo(-0.4, within(1e-8));
    }

    @Test
    void intervals_allow_for_a_line_that_a_short_record_mixes_with_the_signal() {
        double[] held = new double[2];
        for (int seed = 1; seed <= RUNS; seed++) {
            RandomGenerator random = new SplittableRandom(seed);
            double[] truth = {2 + random.nextDouble(), 10, 6 * random.nextDouble() - 3};
            double[] samples = noisy(random, truth, 0.5, 0, 0);
            double hertz = truth[0] + 0.8 + 0.4 * random.nextDouble();
            for (int i = 0; i < samples.length; i++) {
                samples[i] += Math.sin(2 * Math.PI * hertz * i * 5e-4 + truth[2]);
            }
            HarmonicTerms terms =
                    HarmonicTerms.ofOrders(1, 5).startingAt(truth[0]).withLine(hertz);
            HarmonicFit fit = HarmonicFit.ofSamples(terms, samples, 5e-4);
            double factor = Quantile.coverageFactor(0.95, fit.effectiveDegreesOfFreedom());
            Harmonic first = fit.harmonic(1);
            Harmonic line = fit.line().orElseThrow();
            held[0] += Math.abs(first.amplitude() - 10) <= factor * first.amplitudeStandardError() ? 1.0 / RUNS : 0;
            held[1] += Math.abs(line.amplitude() - 1) <= factor * line.amplitudeStandardError() ? 1.0 / RUNS : 0;
        }
        assertThat(held[0]).as("signal").isBetween(0.92, 0.98);
        assertThat(held[1]).as("line").isBetween(0.92, 0.98);
    }

    @Test
    void finds_them_at_uneven_times() {
        RandomGenerator random = new SplittableRandom(5);
        double[] times = new double[4000];
        double[] signal = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = 12 + 1e-3 * (i + 0.6 * random.nextDouble());
            signal[i] = 3 + 10 * Math.sin(2 * Math.PI * 17.3 * times[i] + 0.7);
        }
        HarmonicFit fit = HarmonicFit.overTime(HarmonicTerms.ofOrders(1), times, signal);
        assertThat(fit.frequency()).isCloseTo(17.3, within(1e-9));
        assertThat(fit.harmonic(1).phase()).isCloseTo(0.7, within(1e-6));
        assertThat(fit.harmonic(1).amplitude()).isCloseTo(10, within(1e-8));
    }

    @Test
    void finds_them_over_known_angles_that_speed_up() {
        double[] angles = new double[3000];
        double[] signal = new double[angles.length];
        for (int i = 0; i < angles.length; i++) {
            double share = i / 3000.0;
            angles[i] = 40 * share + 30 * share * share;
            signal[i] = 3 + 10 * Math.sin(angles[i] + 0.7) + 0.2 * Math.sin(7 * angles[i] + 1.1);
        }
        HarmonicFit fit = HarmonicFit.overAngle(HarmonicTerms.ofOrders(1, 7), angles, signal);
        assertThat(fit.harmonic(1).amplitude()).isCloseTo(10, within(1e-10));
        assertThat(fit.harmonic(1).phase()).isCloseTo(0.7, within(1e-10));
        assertThat(fit.harmonic(7).phase()).isCloseTo(1.1, within(1e-9));
        assertThat(fit.frequencyStandardError()).isZero();
    }

    @Test
    void starts_where_it_is_told_when_the_base_is_not_the_strongest_line() {
        double[] signal = new double[2000];
        for (int i = 0; i < signal.length; i++) {
            double x = 2 * Math.PI * 21.4 * i / 2000.0;
            signal[i] = Math.sin(x) + 5 * Math.sin(3 * x + 1);
        }
        HarmonicFit fit = HarmonicFit.ofSamples(HarmonicTerms.ofOrders(1, 3).startingAt(21.2), signal, 1 / 2000.0);
        assertThat(fit.frequency()).isCloseTo(21.4, within(1e-9));
        assertThat(fit.harmonic(3).amplitude()).isCloseTo(5, within(1e-9));
    }

    @Test
    void long_records_keep_their_phase() {
        int count = 1_000_000;
        HarmonicFit fit = HarmonicFit.ofSamples(ORDERS, signal(count, 12345.678), 1e-5);
        finds(fit, 1234.5678, 1e-9);
        assertThat(fit.residualSd()).isLessThan(1e-9);
    }

    @Test
    void noise_alone_has_no_frequency() {
        int found = 0;
        for (int seed = 0; seed < 300; seed++) {
            RandomGenerator random = new SplittableRandom(seed);
            double[] noise = random.doubles(500).map(v -> random.nextGaussian()).toArray();
            HarmonicFit fit = HarmonicFit.ofSamples(HarmonicTerms.ofOrders(1), noise, 1);
            found += fit.status().converged() ? 1 : 0;
        }
        assertThat(found).as("false alarms in 300").isLessThan(12);
    }

    @Test
    void too_few_and_flat_samples_are_an_ordinary_result() {
        assertThat(HarmonicFit.ofSamples(ORDERS, new double[5], 1).status()).isEqualTo(FitStatus.TOO_FEW_OBSERVATIONS);
        assertThat(HarmonicFit.ofSamples(ORDERS, new double[500], 1).status()).isEqualTo(FitStatus.NOT_DETERMINED);
    }

    @ParameterizedTest(name = "noise {0}, step {1}, neighbour correlation {2}")
    @CsvSource({"0.1, 0, 0", "0.1, 0.3, 0", "0.3, 0.3, 0", "0.2, 0, 0.5", "0.2, 0, 0.9"})
    void intervals_hold_the_truth_in_about_95_of_100_records(double noise, double step, double correlation) {
        for (double share : sharesHeld(noise, step, correlation, 5)) {
            assertThat(share).as("share, seeds 1 to %d", RUNS).isBetween(0.92, 0.98);
        }
    }

    @Test
    void intervals_hold_for_one_and_a_half_periods_too() {
        for (double share : sharesHeld(0.1, 0, 0, 1.5)) {
            assertThat(share).as("share, seeds 1 to %d", RUNS).isBetween(0.92, 0.98);
        }
    }

    /**
     * Rounding alone has a bounded error, so intervals from its root mean square hold it with room; so do those of a
     * fifth order that lies where slow noise is weaker than its mean, since factors below 1 are not used.
     */
    @ParameterizedTest(name = "noise {0}, step {1}, neighbour correlation {2}")
    @CsvSource({"0, 0.4, 0", "0.02, 0.5, 0", "0.05, 0.3, 0", "0.3, 0, 0.98"})
    void intervals_are_wide_enough_where_the_error_is_no_white_noise(double noise, double step, double correlation) {
        for (double share : sharesHeld(noise, step, correlation, 5)) {
            assertThat(share).as("share, seeds 1 to %d", RUNS).isGreaterThan(0.92);
        }
    }

    /** For frequency, amplitude and phase of the first order, and amplitude of the fifth. */
    private static double[] sharesHeld(double noise, double step, double correlation, double leastPeriods) {
        double[] held = new double[4];
        for (int seed = 1; seed <= RUNS; seed++) {
            RandomGenerator random = new SplittableRandom(seed);
            double periods = leastPeriods * (1 + 4 * random.nextDouble());
            double amplitude = 5 + 10 * random.nextDouble();
            double phase = 6 * random.nextDouble() - 3;
            double[] samples = noisy(random, new double[] {periods, amplitude, phase}, noise, step, correlation);
            HarmonicFit fit = HarmonicFit.ofSamples(HarmonicTerms.ofOrders(1, 5).roundedTo(step), samples, 5e-4);
            double factor = Quantile.coverageFactor(0.95, fit.effectiveDegreesOfFreedom());
            Harmonic first = fit.harmonic(1);
            Harmonic fifth = fit.harmonic(5);
            double[] errors = {
                (fit.frequency() - periods) / fit.frequencyStandardError(),
                (first.amplitude() - amplitude) / first.amplitudeStandardError(),
                (first.phase() - phase) / first.phaseStandardError(),
                (fifth.amplitude() - 0.05 * amplitude) / fifth.amplitudeStandardError()
            };
            for (int i = 0; i < held.length; i++) {
                held[i] += Math.abs(errors[i]) <= factor ? 1.0 / RUNS : 0;
            }
        }
        return held;
    }

    /** 2000 samples over one second with noise of the first order, rounded last. */
    private static double[] noisy(
            RandomGenerator random, double[] truth, double noise, double step, double correlation) {
        double offset = random.nextDouble() - 0.5;
        double[] samples = new double[2000];
        double error = random.nextGaussian() / Math.sqrt(1 - correlation * correlation);
        for (int i = 0; i < samples.length; i++) {
            error = correlation * error + random.nextGaussian();
            double x = 2 * Math.PI * truth[0] * i * 5e-4 + truth[2];
            double value = offset + truth[1] * (Math.sin(x) + 0.05 * Math.sin(5 * x + 0.3)) + noise * error;
            samples[i] = step == 0 ? value : step * Math.rint(value / step);
        }
        return samples;
    }
}
