package servowright.engine.thermal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CopperHeatTest {

    private static final double ZERO = 273.15;

    /** 3.2 K/W, 25 °C ambient, copper 0.00393 /K at 20 °C. */
    private static final CopperHeat MOTOR = new CopperHeat(ZERO + 25, 3.2, ZERO + 20, 0.00393);

    /** Closed form, recomputed. */
    @ParameterizedTest
    @CsvSource({"10, 62.322", "20, 112.187", "40, 287.63"})
    void settles_with_copper_feedback(double watt, double celsius) {
        assertThat(MOTOR.settledKelvin(watt).orElseThrow() - ZERO).isCloseTo(celsius, within(5.1e-3));
    }

    @Test
    void balances_heat_where_it_settles() {
        double kelvin = MOTOR.settledKelvin(20).orElseThrow();
        assertThat((kelvin - ZERO - 25) / 3.2).isCloseTo(20 * MOTOR.resistanceFactor(kelvin), within(1e-9));
    }

    @Test
    void runs_away_from_79_517_watt_on() {
        assertThat(MOTOR.runawayWatt().orElseThrow()).isCloseTo(79.517, within(5e-4));
        assertThat(MOTOR.settledKelvin(79.6)).isEmpty();
        assertThat(MOTOR.settledKelvin(79.4)).isPresent();
    }

    /** Without feedback 20 W give 89 °C: 23 K too little (recomputed). */
    @Test
    void shows_what_ignoring_the_feedback_hides() {
        CopperHeat blind = new CopperHeat(ZERO + 25, 3.2, ZERO + 20, 0);
        assertThat(blind.settledKelvin(20).orElseThrow() - ZERO).isCloseTo(89, within(1e-9));
        assertThat(blind.runawayWatt()).isEmpty();
    }

    @Test
    void allows_the_current_that_settles_at_the_limit() {
        CopperHeat.Continuous limit = MOTOR.continuous(ZERO + 112.187, 0.05, 0.02625, 0);
        assertThat(limit.lossWatt()).isCloseTo(87.187 / 3.2, within(1e-9));
        assertThat(1.5 * 0.05 * limit.phasePeakAmp() * limit.phasePeakAmp()).isCloseTo(20, within(1e-3));
        assertThat(limit.torqueNewtonMetre()).isCloseTo(0.02625 * limit.phasePeakAmp(), within(1e-15));
        assertThat(MOTOR.continuous(ZERO + 30, 0.05, 0.02625, 10).phasePeakAmp())
                .isZero();
    }

    /** Standing still one phase carries the peak: i² R against i² R / 2 when turning. */
    @Test
    void leaves_one_over_root_two_at_standstill() {
        double share = CopperHeat.standstillShare();
        assertThat(share * share).isCloseTo(0.5, within(1e-15));
    }

    @Test
    void refuses_nan_and_limits_below_ambient() {
        assertThatThrownBy(() -> MOTOR.settledKelvin(Double.NaN)).hasMessageContaining("copper loss");
        assertThatThrownBy(() -> MOTOR.continuous(ZERO + 20, 1, 1, 0)).hasMessageContaining("above ambient");
        assertThatThrownBy(() -> MOTOR.resistanceFactor(1)).hasMessageContaining("resistance factor");
        assertThatThrownBy(() -> new CopperHeat(Double.NaN, 1, 1, 0)).hasMessageContaining("ambient");
    }

    /** τ 800 s (recomputed). */
    @ParameterizedTest
    @CsvSource({"60, 3.7202", "300, 1.7883", "600, 1.3767"})
    void gives_short_time_torque(double second, double factor) {
        assertThat(DutyTorque.shortTimeFactor(second, 800)).isCloseTo(factor, within(5.1e-5));
    }

    /** Cycle 10 min, τ 800 s (recomputed); for a very short cycle the RMS rule 1/√c. */
    @ParameterizedTest
    @CsvSource({"0.15, 2.2268, 2.582", "0.25, 1.7567, 2.0", "0.40, 1.4268, 1.581", "0.60, 1.2067, 1.291"})
    void gives_periodic_torque(double share, double factor, double rmsRule) {
        assertThat(DutyTorque.periodicFactor(600, share, 800)).isCloseTo(factor, within(5.1e-5));
        assertThat(DutyTorque.periodicFactor(0.01, share, 800)).isCloseTo(rmsRule, within(5e-4));
        assertThatThrownBy(() -> DutyTorque.periodicFactor(600, 1.5, 800)).hasMessageContaining("share");
    }
}
