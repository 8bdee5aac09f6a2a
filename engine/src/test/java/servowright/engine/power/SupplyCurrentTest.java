package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SupplyCurrentTest {

    private static final double RPM = Math.PI / 30;

    /** 270 rpm/V line peak, so 0.020420 V s/rad phase peak; 75 A, 39 mΩ, 24 V (practitioner case, recomputed). */
    private static final double EMF = 1 / (270 * RPM * Math.sqrt(3));

    private static final double TORQUE = 1.5 * EMF * 75;

    @ParameterizedTest
    @CsvSource({"0, 13.71", "500, 18.72", "1000, 23.73"})
    void draws_far_less_than_the_phase_current(double rpm, double amp) {
        assertThat(EMF).isCloseTo(0.02042, within(5e-6));
        assertThat(TORQUE).isCloseTo(2.297, within(5e-4));
        assertThat(SupplyCurrent.of(TORQUE, rpm * RPM, 75, 0.039, 0, 24).busAmp())
                .isCloseTo(amp, within(5e-3));
    }

    /** At the voltage limit with resistance only, 5112 rpm: 64.95 A, which is √3/2 · 75 A (power balance). */
    @Test
    void stays_below_the_phase_current_even_at_the_voltage_limit() {
        double speed = (24 / Math.sqrt(3) - 0.039 * 75) / EMF;
        assertThat(speed / RPM).isCloseTo(5112, within(0.5));
        SupplyCurrent drawn = SupplyCurrent.of(TORQUE, speed, 75, 0.039, 0, 24);
        assertThat(drawn.busAmp()).isCloseTo(64.95, within(5e-3));
        assertThat(drawn.busAmp()).isCloseTo(Math.sqrt(0.75) * 75, within(1e-9));
        assertThat(drawn.efficiency()).isCloseTo(1 - 1.5 * 0.039 * 75 * 75 / (24 * drawn.busAmp()), within(1e-12));
    }

    /** 5 A into 39 mΩ at 24 V draw 0.06 A plus idle current (practitioner case, recomputed). */
    @Test
    void explains_a_calibration_current_that_the_supply_hardly_shows() {
        assertThat(SupplyCurrent.of(0, 0, 5, 0.039, 0, 24).busAmp()).isCloseTo(0.061, within(5e-4));
        assertThat(SupplyCurrent.of(0, 0, 5, 0.039, 7.2, 24).busAmp()).isCloseTo(0.361, within(5e-4));
        assertThat(SupplyCurrent.of(0, 0, 5, 0.039, 0, 24).efficiency()).isZero();
    }

    @Test
    void gives_power_back_when_braking() {
        assertThat(SupplyCurrent.of(-1, 100, 10, 0.05, 0, 24).busAmp()).isNegative();
    }

    @Test
    void converts_copper_loss_between_forms() {
        assertThat(CopperLoss.watt(20, 0.05)).isCloseTo(3 * 0.05 * 200, within(1e-12)); // 3 R I² RMS
        assertThat(CopperLoss.phasePeakAmp(CopperLoss.watt(20, 0.05), 0.05)).isCloseTo(20, within(1e-12));
        assertThat(CopperLoss.sixStepWatt(10, 0.05)).isCloseTo(10, within(1e-12));
    }

    @Test
    void refuses_nan() {
        assertThatThrownBy(() -> SupplyCurrent.of(Double.NaN, 0, 0, 0, 0, 24)).hasMessageContaining("torque");
        assertThatThrownBy(() -> CopperLoss.watt(Double.NaN, 1)).hasMessageContaining("phase current");
    }
}
