package servowright.engine.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import servowright.engine.numeric.Statistics;

/** Lags whose figures are put in and must come out again, and textbook points of the step and frequency response. */
class DelayedLagTest {
    private static final DelayedLag LAG = new DelayedLag(2.5, 0.1, 0.01);

    /** At the corner 1/√2 and −45°, and 63.2 % of a step after one time constant: any textbook of control; from memory. */
    @Test
    void has_the_corner_of_the_textbooks() {
        assertThat(LAG.cornerRadPerS()).isEqualTo(10);
        assertThat(LAG.ratio(10)).isCloseTo(2.5 / Math.sqrt(2), within(1e-12));
        assertThat(LAG.phaseRad(10)).isCloseTo(-Math.PI / 4 - 0.1, within(1e-12));
        assertThat(new DelayedLag(-1, 0.1, 0).phaseRad(10)).isCloseTo(-1.25 * Math.PI, within(1e-12));
        assertThatThrownBy(() -> new DelayedLag(1, 0, 0)).hasMessageContaining("time constant");
    }

    @Test
    void answers_a_step_as_the_textbooks_say() {
        double[] t = {0, 0.01, 0.02, 0.045, 0.13, 0.33};
        double[] u = {0, 1, 1, 1, 1, 1};
        double[] f = LagRun.of(t, u, 0.1, 0.02).forced();
        // The step at 10 ms arrives at 30 ms; one time constant later it has come to 1 − 1/e, three later to 1 − 1/e³.
        assertThat(f).containsExactly(new double[] {0, 0, 0, 1 - Math.exp(-0.15), 0.6321206, 0.9502129}, within(1e-7));
    }

    @Test
    void knows_how_its_answer_depends_on_its_figures() {
        double[] t = times(200, 0.003);
        double[] u = Arrays.stream(t).map(s -> Math.sin(20 * s * s)).toArray();
        LagRun run = LagRun.of(t, u, 0.07, 0.0107);
        double h = 1e-6;
        double[] more = LagRun.of(t, u, 0.07 + h, 0.0107).forced();
        double[] less = LagRun.of(t, u, 0.07 - h, 0.0107).forced();
        double[] later = LagRun.of(t, u, 0.07, 0.0107 + h).forced();
        double[] sooner = LagRun.of(t, u, 0.07, 0.0107 - h).forced();
        for (int k = 0; k < t.length; k++) {
            assertThat(run.byTau()[k]).isCloseTo((more[k] - less[k]) / (2 * h), within(1e-5));
            assertThat(run.byDelay()[k]).isCloseTo((later[k] - sooner[k]) / (2 * h), within(1e-5));
        }
    }

    private static double[] times(int count, double step) {
        double[] t = new double[count];
        for (int k = 0; k < count; k++) {
            t[k] = k * step;
        }
        return t;
    }

    @Test
    void is_found_again_in_a_recording_with_its_start_and_offset() {
        double[] t = times(3000, 0.002);
        double[] u = Arrays.stream(t)
                .map(s -> Math.signum(Math.sin(2.1 * s)) + 0.3 * Math.sin(s * s))
                .toArray();
        LagRun run = LagRun.of(t, u, 0.1, 0.0131);
        double[] y = new double[t.length];
        Random random = new Random(1);
        for (int k = 0; k < y.length; k++) {
            y[k] = -2.5 * run.forced()[k] + 0.4 * run.natural()[k] + 0.7 + 0.01 * random.nextGaussian();
        }
        LagFit fit = LagFit.of(t, u, y).orElseThrow();
        assertThat(fit.lag().gain()).isCloseTo(-2.5, within(0.002));
        assertThat(fit.lag().tauSecond()).isCloseTo(0.1, within(2e-4));
        assertThat(fit.lag().delaySecond()).isCloseTo(0.0131, within(1e-4));
        assertThat(fit.offset()).isCloseTo(0.7, within(0.002));
        assertThat(fit.start()).isCloseTo(0.4, within(0.02));
        assertThat(fit.explained(y)).isGreaterThan(0.99);
        assertThat(fit.byLevel(y).orElseThrow().parameter(0)).isCloseTo(-2.5, within(0.02));
    }

    /** Exact figures without a delay, and inputs that say nothing. */
    @Test
    void leaves_out_a_delay_that_is_not_there_and_says_nothing_where_nothing_changes() {
        double[] t = times(400, 0.01);
        double[] u = Arrays.stream(t).map(s -> s < 1 ? 0 : s < 2 ? 1 : -0.5).toArray();
        double[] y =
                Arrays.stream(LagRun.of(t, u, 0.1, 0).forced()).map(f -> 3 * f).toArray();
        double[] early = Arrays.copyOf(Arrays.copyOfRange(y, 1, y.length), y.length);
        early[y.length - 1] = y[y.length - 1];
        LagFit fit = LagFit.of(t, u, early).orElseThrow();
        assertThat(fit.delayed()).isFalse();
        assertThat(fit.lag().delaySecond()).isZero();
        assertThat(fit.tangent().parameters().size()).isEqualTo(4);
        assertThat(LagFit.of(t, new double[t.length], y)).isEmpty();
        assertThat(LagFit.of(t, u, new double[t.length]))
                .satisfies(
                        f -> assertThat(f.map(LagFit::lag).map(DelayedLag::gain).orElse(0.0))
                                .isCloseTo(0, within(1e-9)));
    }

    @Test
    void is_not_found_in_sines_far_below_its_corner() {
        List<SinePoint> flat = List.of(
                new SinePoint(1, 2, 1e-3, -0.001, 1e-3),
                new SinePoint(2, 2.001, 1e-3, -0.002, 1e-3),
                new SinePoint(3, 1.999, 1e-3, -0.003, 1e-3));
        assertThat(FrequencyFit.of(flat, false))
                .satisfies(f ->
                        f.ifPresent(found -> assertThat(found.lag().tauSecond()).isLessThan(0.05)));
        List<SinePoint> leading = List.of(
                new SinePoint(1, 2, 1e-3, 0.3, 1e-3),
                new SinePoint(2, 2, 1e-3, 0.6, 1e-3),
                new SinePoint(4, 2, 1e-3, 1.2, 1e-3));
        assertThat(FrequencyFit.of(leading, false)).isEmpty();
    }

    private static List<SinePoint> sines(DelayedLag lag, double scatter, Random random) {
        List<SinePoint> points = new ArrayList<>();
        for (double w : new double[] {40, 1, 2, 5, 10, 20, 80}) {
            double ratio = lag.ratio(w) * Math.exp(scatter * random.nextGaussian());
            double phase = Math.IEEEremainder(lag.phaseRad(w) + scatter * random.nextGaussian(), 2 * Math.PI);
            points.add(new SinePoint(w, ratio, 1e-4, phase, 1e-4));
        }
        return points;
    }

    @Test
    void is_found_again_in_sines_of_either_sign() {
        for (double gain : new double[] {2.5, -2.5}) {
            DelayedLag lag = new DelayedLag(gain, 0.1, 0.01);
            FrequencyFit fit =
                    FrequencyFit.of(sines(lag, 0, new Random(2)), true).orElseThrow();
            assertThat(fit.lag().gain()).isCloseTo(gain, within(1e-6));
            assertThat(fit.lag().tauSecond()).isCloseTo(0.1, within(1e-7));
            assertThat(fit.lag().delaySecond()).isCloseTo(0.01, within(1e-7));
            assertThat(fit.scatter()).isLessThan(1e-6);
            FrequencyFit plain =
                    FrequencyFit.of(sines(lag, 0, new Random(2)), false).orElseThrow();
            assertThat(plain.scatter()).isGreaterThan(0.01);
            assertThat(plain.delayStandard()).isZero();
        }
        assertThat(FrequencyFit.of(sines(LAG, 0, new Random(3)).subList(0, 2), true))
                .isEmpty();
    }

    /** Seven sines and three figures: the scatter put in comes out within the spread of its estimates. */
    @Test
    void finds_the_scatter_that_all_sines_share() {
        double[] found = new double[200];
        for (int k = 0; k < found.length; k++) {
            found[k] = FrequencyFit.of(sines(LAG, 0.05, new Random(100 + k)), true)
                    .orElseThrow()
                    .scatter();
        }
        assertThat(Statistics.rootMeanSquare(found)).isCloseTo(0.05, within(0.003));
    }
}
