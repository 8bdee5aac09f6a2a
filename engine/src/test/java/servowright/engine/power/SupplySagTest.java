package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SupplySagTest {

    @Test
    void the_load_gets_its_power_at_the_sagged_voltage() {
        // Ohm's law both ways: 24 V behind 0.1 ohm with 100 W.
        double volt = SupplySag.volt(24, 0.1, 100);
        assertThat(volt * (24 - volt) / 0.1).isCloseTo(100, within(1e-9));
        assertThat(volt).isBetween(23.5, 24.0);
    }

    @Test
    void a_supply_without_resistance_keeps_its_voltage() {
        assertThat(SupplySag.volt(24, 0, 1000)).isEqualTo(24);
    }

    @Test
    void power_that_comes_back_raises_the_voltage() {
        assertThat(SupplySag.volt(24, 0.1, -100)).isGreaterThan(24);
    }

    @Test
    void beyond_the_most_power_half_the_voltage_is_left() {
        // Maximum power theorem: V²/(4 R) at V/2.
        assertThat(SupplySag.mostWatt(24, 0.1)).isCloseTo(1440, within(1e-9));
        assertThat(SupplySag.volt(24, 0.1, 1440)).isCloseTo(12, within(1e-6));
        assertThat(SupplySag.volt(24, 0.1, 5000)).isEqualTo(12);
    }

    @Test
    void refuses_what_is_no_supply() {
        assertThatThrownBy(() -> SupplySag.volt(0, 0.1, 1)).hasMessageContaining("open voltage");
        assertThatThrownBy(() -> SupplySag.volt(24, Double.NaN, 1)).hasMessageContaining("inner resistance");
        assertThatThrownBy(() -> SupplySag.volt(24, 0.1, Double.NaN)).hasMessageContaining("power");
    }
}
