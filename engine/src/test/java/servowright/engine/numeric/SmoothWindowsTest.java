package servowright.engine.numeric;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class SmoothWindowsTest {
    private static final int COUNT = 400;

    /** Uneven times, the step from 0.5 to 1.5 ms. */
    private static double[] times() {
        double[] times = new double[COUNT];
        for (int i = 1; i < COUNT; i++) {
            times[i] = times[i - 1] + 1e-3 * (1 + 0.5 * Math.sin(i));
        }
        return times;
    }

    @Test
    void are_exact_for_a_straight_line_over_uneven_times() {
        double[] t = times();
        SmoothWindows windows = SmoothWindows.over(t, 20);
        double[] line = Arrays.stream(t).map(x -> 3 - 7 * x).toArray();
        for (double slope : windows.slopes(line)) {
            assertThat(slope).isCloseTo(-7, within(1e-9));
        }
        double[] ones = new double[COUNT];
        Arrays.fill(ones, 1);
        for (double mean : windows.means(ones)) {
            assertThat(mean).isCloseTo(1, within(1e-12));
        }
        assertThat(windows.middles()).hasSize(windows.count()).isSorted();
    }

    /** y' = k y holds between the means of y and of its derivative. */
    @Test
    void keep_a_differential_equation() {
        double[] t = times();
        double[] decay = Arrays.stream(t).map(x -> Math.exp(-12 * x)).toArray();
        SmoothWindows windows = SmoothWindows.over(t, 20);
        double[] means = windows.means(decay);
        double[] slopes = windows.slopes(decay);
        for (int k = 0; k < means.length; k++) {
            assertThat(slopes[k] / means[k]).isCloseTo(-12, within(1e-3));
        }
    }

    @Test
    void leave_gaps_out_and_say_where_a_signal_changes_its_sign() {
        double[] t = times();
        for (int i = 200; i < COUNT; i++) {
            t[i] += 0.1;
        }
        SmoothWindows whole = SmoothWindows.over(times(), 20);
        SmoothWindows broken = SmoothWindows.over(t, 20);
        assertThat(broken.count()).isLessThan(whole.count());
        double[] sign = new double[COUNT];
        Arrays.setAll(sign, i -> i < 105 ? 2 : -3);
        double[] sizes = whole.leastSizes(sign);
        assertThat(sizes[0]).isEqualTo(2);
        assertThat(sizes[sizes.length - 1]).isEqualTo(3);
        assertThat(sizes).contains(0);
    }

    /** Weights sin²: Σφ²/(Σφ)² = (3/8 n)/(n/2)² = 3/(2 n) for n intervals (recomputed). */
    @Test
    void say_how_much_noise_is_left() {
        assertThat(SmoothWindows.over(times(), 31).noiseShare()).isCloseTo(1.5 / 30, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> SmoothWindows.over(times(), 4));
    }
}
