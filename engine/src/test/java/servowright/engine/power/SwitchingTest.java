package servowright.engine.power;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SwitchingTest {

    /** Exact switching integration by another program, V/(L f); peak to peak and RMS (recomputed). */
    @ParameterizedTest
    @CsvSource({
        "0.10, 0.0264, 0.00540",
        "0.25, 0.0565, 0.01170",
        "0.50, 0.08333, 0.01795",
        "0.75, 0.125, 0.02081",
        "1.00, 0.16667, 0.02515"
    })
    void ripples_like_a_switched_simulation(double depth, double peakToPeak, double rms) {
        CurrentRipple ripple = CurrentRipple.ofSpaceVector(depth);
        assertThat(ripple.peakToPeak()).isCloseTo(peakToPeak, within(5e-5));
        assertThat(ripple.rms()).isCloseTo(rms, within(5.1e-6));
    }

    @Test
    void follows_the_straight_line_above_half_depth() {
        for (double depth = 0.5; depth <= 1; depth += 0.05) {
            assertThat(CurrentRipple.ofSpaceVector(depth).peakToPeak()).isCloseTo(depth / 6, within(1e-9));
        }
        assertThat(CurrentRipple.ofSpaceVector(0).peakToPeak()).isCloseTo(0, within(1e-15));
    }

    /** 24 V, 60 µH, 20 kHz, full depth: 3.33 A peak to peak (recomputed); rules of thumb say 5 and 2.5 A. */
    @Test
    void ripples_3_33_ampere_in_the_example() {
        CurrentRipple full = CurrentRipple.ofSpaceVector(1);
        assertThat(full.peakToPeakAmp(24, 60e-6, 20e3)).isCloseTo(3.33, within(5e-3));
        assertThat(full.rmsAmp(24, 60e-6, 20e3)).isCloseTo(0.503, within(5e-4));
    }

    /** 48 V, 1 µs and 24 V, 0.5 µs at 20 kHz; then 0.24 V at 5 A (recomputed). */
    @Test
    void loses_volts_to_dead_time_and_biases_a_resistance() {
        assertThat(DeadTime.legVolt(48, 1e-6, 20e3)).isCloseTo(0.96, within(1e-12));
        assertThat(DeadTime.fundamentalVolt(48, 1e-6, 20e3)).isCloseTo(1.2223, within(5e-5));
        assertThat(DeadTime.legVolt(24, 0.5e-6, 20e3)).isCloseTo(0.24, within(1e-12));
        assertThat(DeadTime.fundamentalVolt(24, 0.5e-6, 20e3)).isCloseTo(0.3056, within(5e-5));
        assertThat(DeadTime.resistanceBiasOhm(0.24, 5)).isCloseTo(0.048, within(1e-12));
    }

    /** 20 A peak, 2 mΩ, 60 µJ, 20 kHz, 0.5 µs, 0.9 V: 1.200, 2.2918 and 0.6875 W (recomputed). */
    @Test
    void heats_the_bridge() {
        BridgeLoss loss = BridgeLoss.of(new BridgeLoss.Switches(2e-3, 60e-6, 20, 0.9, 0.5e-6, 20e3), 20);
        assertThat(loss.conductionWatt()).isCloseTo(1.200, within(1e-12));
        assertThat(loss.switchingWatt()).isCloseTo(2.2918, within(5e-5));
        assertThat(loss.diodeWatt()).isCloseTo(0.6875, within(5e-5));
        assertThat(loss.totalWatt()).isCloseTo(4.1793, within(1e-4));
    }

    /** Capacitor current per phase RMS current at power factor 1 (formula from memory, figures recomputed). */
    @ParameterizedTest
    @CsvSource({"0.2, 0.480", "0.4, 0.609", "0.6, 0.650", "0.8, 0.619", "1.0, 0.503", "1.15, 0.312"})
    void loads_the_link_capacitor_most_in_the_middle(double depth, double share) {
        assertThat(LinkCapacitor.rmsAmp(10, depth, 1) / 10).isCloseTo(share, within(5.1e-4));
        assertThatThrownBy(() -> LinkCapacitor.rmsAmp(1, 0.5, Double.NaN)).hasMessageContaining("power factor");
    }

    @Test
    void refuses_nan_and_overmodulation() {
        assertThatThrownBy(() -> CurrentRipple.ofSpaceVector(1.1)).hasMessageContaining("depth");
        assertThatThrownBy(() -> CurrentRipple.ofSpaceVector(Double.NaN)).hasMessageContaining("depth");
        assertThatThrownBy(() -> DeadTime.legVolt(24, Double.NaN, 1)).hasMessageContaining("dead time");
        assertThatThrownBy(() -> new BridgeLoss.Switches(Double.NaN, 0, 1, 0, 0, 1))
                .hasMessageContaining("switch");
    }
}
