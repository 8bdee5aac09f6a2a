package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ChopperTest {
    /** 19.878 A at 12 V feed a motor at 4 V with 59.6 A (power balance, recomputed). */
    @Test
    void trades_voltage_for_current() {
        assertThat(19.878 * Chopper.motorPerSupplyAmp(12, 4)).isCloseTo(59.634, within(1e-9));
        assertThat(Chopper.motorPerSupplyAmp(12, 12)).isEqualTo(1);
        assertThatThrownBy(() -> Chopper.motorPerSupplyAmp(12, 13)).hasMessageContaining("mean voltage");
    }
}
