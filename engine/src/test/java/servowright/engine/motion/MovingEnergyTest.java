package servowright.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class MovingEnergyTest {

    @Test
    void agrees_with_worked_examples() {
        // Recomputed outside this program: 4e-4 kg m² at 3000 rpm holds 19.74 J; 4e-3 kg m² at 60 rad/s 7.2 J.
        assertThat(MovingEnergy.joule(4e-4, 3000 * Math.PI / 30)).isCloseTo(19.74, within(0.005));
        assertThat(MovingEnergy.joule(4e-3, -60)).isCloseTo(7.2, within(1e-12));
    }

    @Test
    void refuses_what_is_no_inertia() {
        assertThatThrownBy(() -> MovingEnergy.joule(-1, 1)).hasMessageContaining("moment of inertia");
        assertThatThrownBy(() -> MovingEnergy.joule(1, Double.NaN)).hasMessageContaining("speed");
    }
}
