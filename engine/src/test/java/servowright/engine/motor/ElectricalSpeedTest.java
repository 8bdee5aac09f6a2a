package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ElectricalSpeedTest {

    /** 12 kHz loop, 7 pole pairs, 1000 rad/s: 10.8 steps per electrical turn (practitioner case, recomputed). */
    @Test
    void counts_control_steps_per_electrical_turn() {
        assertThat(ElectricalSpeed.hertz(1000, 7)).isCloseTo(1114, within(0.5));
        assertThat(ElectricalSpeed.controlStepsPerTurn(12_000, 1000, 7)).isCloseTo(10.8, within(0.05));
        assertThat(ElectricalSpeed.controlStepsPerTurn(12_000, -1000, 7)).isCloseTo(10.8, within(0.05));
    }

    /** Lag p ω t: 21 pole pairs at 100 rad/s lose 0.105 rad in 50 µs (derived). */
    @Test
    void loses_angle_during_a_delay() {
        assertThat(ElectricalSpeed.angleLostElectricalRad(50e-6, 100, 21)).isCloseTo(0.105, within(1e-12));
    }

    @Test
    void comes_back_from_frequency() {
        assertThat(ElectricalSpeed.mechRadPerS(ElectricalSpeed.hertz(123, 5), 5))
                .isCloseTo(123, within(1e-12));
    }

    @Test
    void refuses_a_standing_shaft_and_nan() {
        assertThatThrownBy(() -> ElectricalSpeed.controlStepsPerTurn(1e4, 0, 7))
                .hasMessageContaining("electrical frequency");
        assertThatThrownBy(() -> ElectricalSpeed.hertz(Double.NaN, 7)).hasMessageContaining("shaft speed");
    }
}
