package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import servowright.engine.quantity.CurrentBasis;

class PhaseCurrentTest {

    @Test
    void a_sine_peaks_at_root_two_of_its_rms() {
        // Definition of the RMS of a sine.
        assertThat(PhaseCurrent.peakPer(CurrentBasis.PHASE_RMS)).isEqualTo(Math.sqrt(2));
        assertThat(PhaseCurrent.peakPer(CurrentBasis.Q_AXIS)).isEqualTo(1);
        assertThat(PhaseCurrent.peakPer(CurrentBasis.SIX_STEP)).isEqualTo(1);
    }

    @Test
    void refuses_the_supply_current() {
        assertThatThrownBy(() -> PhaseCurrent.peakPer(CurrentBasis.SUPPLY)).hasMessageContaining("supply current");
    }
}
