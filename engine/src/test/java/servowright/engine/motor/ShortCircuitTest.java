package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class ShortCircuitTest {

    /** Modelica Standard Library, SM_PermanentMagnetData (record seen): symmetric short circuit 279.96 A RMS, recomputed. */
    @Test
    void agrees_with_modelica_standard_library_sm_permanent_magnet_data() {
        double omega = 2 * Math.PI * 50;
        Winding winding = new Winding(0.03, 0.4 / omega, 0.4 / omega, 112.3 * Math.sqrt(2) / omega, 2);
        assertThat(ShortCircuit.of(winding, omega / 2).phasePeakAmp() / Math.sqrt(2))
                .isCloseTo(279.96, within(5e-3));
    }

    @Test
    void equals_emf_over_impedance_without_saliency() {
        Winding winding = new Winding(0.05, 60e-6, 60e-6, 2.5e-3, 7);
        double electric = 7 * 200;
        assertThat(ShortCircuit.of(winding, 200).phasePeakAmp())
                .isCloseTo(electric * 2.5e-3 / Math.hypot(0.05, electric * 60e-6), within(1e-9));
    }

    @Test
    void balances_power_and_needs_no_voltage() {
        Winding winding = new Winding(0.05, 60e-6, 75e-6, 2.5e-3, 7);
        ShortCircuit joined = ShortCircuit.of(winding, 300);
        OperatingPoint point = OperatingPoint.of(winding, joined.dAmp(), joined.qAmp(), 300);
        assertThat(point.phasePeakVolt()).isCloseTo(0, within(1e-12));
        assertThat(joined.brakeNewtonMetre() * 300).isCloseTo(point.copperWatt(), within(1e-9));
        assertThat(ShortCircuit.of(winding, -300).brakeNewtonMetre())
                .isCloseTo(joined.brakeNewtonMetre(), within(1e-12));
    }

    @Test
    void brakes_hardest_at_the_corner() {
        Winding winding = new Winding(0.05, 60e-6, 60e-6, 2.5e-3, 7);
        ShortCircuit.Peak peak = ShortCircuit.peak(0.05, 60e-6, 2.5e-3, 7);
        assertThat(peak.brakeNewtonMetre()).isCloseTo(1.5 * 7 * 2.5e-3 * 2.5e-3 / (2 * 60e-6), within(1e-12));
        assertThat(ShortCircuit.of(winding, peak.mechRadPerS()).brakeNewtonMetre())
                .isCloseTo(peak.brakeNewtonMetre(), within(1e-12));
        for (double times : new double[] {0.9, 1.1}) {
            assertThat(ShortCircuit.of(winding, times * peak.mechRadPerS()).brakeNewtonMetre())
                    .isLessThan(peak.brakeNewtonMetre());
        }
    }

    @Test
    void refuses_nan() {
        Winding winding = new Winding(0, 60e-6, 60e-6, 2.5e-3, 7);
        assertThatThrownBy(() -> ShortCircuit.of(winding, Double.NaN)).hasMessageContaining("shaft speed");
        assertThatThrownBy(() -> ShortCircuit.of(winding, 0)).hasMessageContaining("R²");
    }
}
