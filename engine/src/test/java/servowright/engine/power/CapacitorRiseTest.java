package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CapacitorRiseTest {

    @Test
    void agrees_with_worked_examples() {
        // Recomputed outside this program: 7.2 J into 4.7 mF at 48 V; 19.74 J into 1 mF at 24 V.
        assertThat(CapacitorRise.volt(48, 7.2, 4.7e-3)).isCloseTo(73.265, within(5e-4));
        assertThat(CapacitorRise.volt(24, 19.74, 1e-3)).isCloseTo(200.1, within(0.05));
        assertThat(CapacitorRise.farad(48, 7.2, 56)).isCloseTo(17.31e-3, within(5e-6));
    }

    @Test
    void no_energy_leaves_the_voltage() {
        assertThat(CapacitorRise.volt(24, 0, 1e-3)).isEqualTo(24);
    }

    @Test
    void refuses_a_limit_below_the_start() {
        assertThatThrownBy(() -> CapacitorRise.farad(48, 7.2, 40)).hasMessageContaining("less that before");
        assertThatThrownBy(() -> CapacitorRise.volt(24, Double.NaN, 1e-3)).hasMessageContaining("returned energy");
    }
}
