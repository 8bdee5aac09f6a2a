package servowright.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Accelerations written down from g = 50, a = 20, b = 0.3, k = 0.01, c = 4, and found again. */
class DrivenFitTest {
    private static final int COUNT = 200;

    private static double[] amps() {
        double[] amps = new double[COUNT];
        Arrays.setAll(amps, i -> 5 * Math.sin(0.7 * i));
        return amps;
    }

    private static double[] speeds(double middle) {
        double[] speeds = new double[COUNT];
        Arrays.setAll(speeds, i -> middle + 30.1 * Math.sin(0.31 * i + 1));
        return speeds;
    }

    private static double[] accelerations(double[] amps, double[] speeds, double k, double c) {
        double[] result = new double[COUNT];
        Arrays.setAll(
                result,
                i -> 50 * amps[i]
                        - 20 * Math.signum(speeds[i])
                        - 0.3 * speeds[i]
                        - k * speeds[i] * Math.abs(speeds[i])
                        + c);
        return result;
    }

    @Test
    void finds_every_term_from_both_directions() {
        double[] speeds = speeds(0);
        DrivenFit fit = DrivenFit.of(accelerations(amps(), speeds, 0.01, 4), amps(), speeds, true)
                .orElseThrow();
        assertThat(fit.bothWays()).isTrue();
        assertThat(fit.perAmp()).isCloseTo(50, within(1e-9));
        assertThat(fit.constantRadPerS2()).isCloseTo(20, within(1e-9));
        assertThat(fit.perSecond()).isCloseTo(0.3, within(1e-9));
        assertThat(fit.steadyRadPerS2()).isCloseTo(4, within(1e-9));
        assertThat(fit.perRadian()).isCloseTo(0.01, within(1e-9));
        DrivenFit two = DrivenFit.of(accelerations(amps(), speeds, 0, 4), amps(), speeds, false)
                .orElseThrow();
        assertThat(two.perRadian()).isZero();
    }

    @Test
    void counts_a_steady_torque_as_dry_drag_when_there_is_one_direction() {
        double[] speeds = speeds(50);
        for (boolean quadratic : new boolean[] {false, true}) {
            DrivenFit fit = DrivenFit.of(
                            accelerations(amps(), speeds, quadratic ? 0.01 : 0, 4), amps(), speeds, quadratic)
                    .orElseThrow();
            assertThat(fit.bothWays()).isFalse();
            assertThat(fit.constantRadPerS2()).isCloseTo(16, within(1e-8));
            assertThat(fit.steadyRadPerS2()).isZero();
            assertThat(fit.perRadian()).isCloseTo(quadratic ? 0.01 : 0, within(1e-9));
        }
        double[] backward = speeds(-50);
        assertThat(DrivenFit.of(accelerations(amps(), backward, 0, 4), amps(), backward, false)
                        .orElseThrow()
                        .constantRadPerS2())
                .isCloseTo(24, within(1e-8));
    }

    @Test
    void has_no_answer_without_a_current_that_changes() {
        double[] speeds = speeds(0);
        assertThat(DrivenFit.of(speeds, new double[COUNT], speeds, false)).isEmpty();
    }
}
