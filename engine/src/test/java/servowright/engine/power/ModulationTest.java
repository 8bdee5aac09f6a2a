package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ModulationTest {

    /** Phase peak per volt of bus, derived from the hexagon and the Fourier series. */
    @ParameterizedTest
    @CsvSource({"SPACE_VECTOR, 0.57735", "SINUSOIDAL, 0.5", "SIX_STEP, 0.63662"})
    void uses_its_share_of_the_bus(Modulation modulation, double share) {
        assertThat(modulation.phasePeakPerBus()).isCloseTo(share, within(5e-6));
        assertThat(modulation.busVolt(modulation.phasePeakVolt(48, 0.1), 0.1)).isCloseTo(48, within(1e-12));
    }

    @Test
    void gains_15_percent_from_space_vector() {
        double gain = Modulation.SPACE_VECTOR.phasePeakPerBus() / Modulation.SINUSOIDAL.phasePeakPerBus();
        assertThat(gain).isCloseTo(1.1547, within(5e-5));
        assertThat(Modulation.SPACE_VECTOR.words()).isEqualTo("space vector");
    }

    @Test
    void keeps_the_reserve_free() {
        assertThat(Modulation.SPACE_VECTOR.phasePeakVolt(24, 0.05)).isCloseTo(13.164, within(5e-4));
        assertThatThrownBy(() -> Modulation.SPACE_VECTOR.phasePeakVolt(24, 1)).hasMessageContaining("reserve");
        assertThatThrownBy(() -> Modulation.SPACE_VECTOR.phasePeakVolt(24, Double.NaN))
                .hasMessageContaining("reserve");
    }
}
