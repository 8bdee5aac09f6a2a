package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OperatingPointTest {

    /**
     * Modelica Standard Library, SM_PermanentMagnetData and the example SMPM_VoltageSource (record seen): p 2, 50 Hz,
     * 0.03 Ω, X 0.4 Ω, 112.3 V RMS per phase open, i_d −53.5 and i_q 84.6 A RMS, nominal 100 V, 100 A, 181.4 N m.
     */
    private static final double OMEGA = 2 * Math.PI * 50;

    private static final Winding MODELICA =
            new Winding(0.03, 0.4 / OMEGA, 0.4 / OMEGA, 112.3 * Math.sqrt(2) / OMEGA, 2);

    @Test
    void agrees_with_modelica_standard_library_sm_permanent_magnet_data() {
        double peak = Math.sqrt(2);
        OperatingPoint point = OperatingPoint.of(MODELICA, -53.5 * peak, 84.6 * peak, OMEGA / 2);
        assertThat(MODELICA.fluxWeberPeak()).isCloseTo(0.505528, within(5e-7));
        assertThat(point.torqueNewtonMetre()).isCloseTo(181.448, within(5e-4)); // nominal 181.4
        assertThat(point.dVolt() / peak).isCloseTo(-35.445, within(5e-4));
        assertThat(point.qVolt() / peak).isCloseTo(93.438, within(5e-4));
        assertThat(point.phasePeakVolt() / peak).isCloseTo(99.935, within(5e-4)); // nominal 100 V
        assertThat(point.phasePeakAmp() / peak).isCloseTo(100.097, within(5e-4)); // nominal 100 A
        assertThat(point.mechanicalWatt()).isCloseTo(28_500, within(5.0));
    }

    /** p 7, 50 mΩ, 60/75 µH, 2.5 mWb: settled algebraic state of a free run, v_d 0, v_q 2 V (recomputed). */
    @Test
    void agrees_with_two_independent_solvers_in_the_steady_state() {
        Winding winding = new Winding(0.05, 60e-6, 75e-6, 2.5e-3, 7);
        OperatingPoint point = OperatingPoint.of(winding, 0.0520177728, 0.0434494574, 114.019228);
        assertThat(point.dVolt()).isCloseTo(0, within(1e-8));
        assertThat(point.qVolt()).isCloseTo(2, within(1e-7));
        assertThat(point.torqueNewtonMetre()).isCloseTo(1e-5 * 114.019228, within(1e-9)); // viscous drag 1e-5
    }

    @Test
    void balances_power() {
        OperatingPoint point = OperatingPoint.of(MODELICA, -20, 100, 120);
        assertThat(point.electricWatt()).isCloseTo(point.mechanicalWatt() + point.copperWatt(), within(1e-9));
    }

    @Test
    void refuses_nan_and_impossible_windings() {
        assertThatThrownBy(() -> OperatingPoint.of(MODELICA, 0, Double.NaN, 0)).hasMessageContaining("q current");
        assertThatThrownBy(() -> new Winding(Double.NaN, 0, 0, 1, 1)).hasMessageContaining("phase resistance");
        assertThatThrownBy(() -> new Winding(0, 0, 0, 0, 1)).hasMessageContaining("flux linkage");
        assertThat(MODELICA.withFluxWeberPeak(0.4).fluxWeberPeak()).isEqualTo(0.4);
    }
}
