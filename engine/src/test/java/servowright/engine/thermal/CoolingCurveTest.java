package servowright.engine.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Readings written down from 205 + 5 exp(−t/60) mohm, and carried back to 210 mohm. */
class CoolingCurveTest {
    private static final double[] SECONDS = {10, 25, 40, 60, 90, 120};

    private static double[] ohms(double swing) {
        return Arrays.stream(SECONDS)
                .map(t -> 0.205 + swing * Math.exp(-t / 60))
                .toArray();
    }

    @Test
    void goes_back_to_the_moment_of_switching_off() {
        CoolingCurve curve = CoolingCurve.of(SECONDS, ohms(0.005)).orElseThrow();
        assertThat(curve.startOhm()).isCloseTo(0.210, within(1e-9));
        assertThat(curve.tauSecond()).isCloseTo(60, within(1e-4));
        assertThat(curve.parabolaOhm()).isCloseTo(0.210, within(2e-4));
        assertThat(curve.freedom()).isEqualTo(3);
    }

    @Test
    void has_no_answer_when_nothing_cools() {
        assertThat(CoolingCurve.of(SECONDS, ohms(-0.005))).isEmpty();
        assertThat(CoolingCurve.of(SECONDS, ohms(0))).isEmpty();
        assertThat(CoolingCurve.of(new double[] {1, 2, 3}, new double[] {3, 2, 1}))
                .isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CoolingCurve.of(new double[] {-1, 2, 3, 4}, new double[] {4, 3, 2, 1}));
    }
}
