package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class AngleTest {

    @Test
    void mean_of_350_and_20_degrees_is_5() {
        // A field report in which a filter gave 185 (seen).
        assertThat(Math.toDegrees(Angles.mean(Math.toRadians(350), Math.toRadians(20))))
                .isCloseTo(5, within(1e-9));
    }

    @Test
    void deviation_of_close_angles_is_the_usual_one() {
        assertThat(Angles.standardDeviation(3.13, -3.13)).isCloseTo(Math.PI - 3.13, within(1e-5));
        assertThat(Angles.standardDeviation(1, 1)).isCloseTo(0, within(1e-7));
    }

    @Test
    void unwrapped_counts_go_on_over_the_turn() {
        double[] rad = Angles.unwrapped(Angles.ofCounts(new int[] {16380, 16383, 2, 5, 16381}, 16384));
        double step = 2 * Math.PI / 16384;
        assertThat(rad[2] - rad[1]).isCloseTo(3 * step, within(1e-12));
        assertThat(rad[4] - rad[3]).isCloseTo(-8 * step, within(1e-12));
        assertThatIllegalArgumentException().isThrownBy(() -> Angles.ofCounts(new int[] {16384}, 16384));
        assertThatIllegalArgumentException().isThrownBy(() -> Angles.wrapped(Double.NaN));
    }
}
