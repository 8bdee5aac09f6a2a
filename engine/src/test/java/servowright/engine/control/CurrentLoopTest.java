package servowright.engine.control;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurrentLoopTest {

    private static final double DELAY = 1.5 / 24_000;

    /** 16 µH, 39 mΩ, 24 kHz, 1.5 periods (practitioner case, recomputed). */
    @ParameterizedTest
    @CsvSource({"1000, 0.016, 39, 86.4", "6283.185307, 0.1005, 245.0, 67.5"})
    void gives_gains_and_margin(double crossover, double kp, double ki, double degrees) {
        CurrentLoop loop = CurrentLoop.of(16e-6, 0.039, crossover, DELAY);
        assertThat(loop.voltPerAmp()).isCloseTo(kp, within(5e-5));
        assertThat(loop.voltPerAmpSecond()).isCloseTo(ki, within(0.05));
        assertThat(Math.toDegrees(loop.phaseMarginRad())).isCloseTo(degrees, within(0.05));
    }

    @Test
    void loses_half_the_distance_when_line_to_line_figures_are_typed() {
        CurrentLoop wrong = CurrentLoop.of(32e-6, 0.078, 2 * Math.PI * 1000, DELAY);
        double real = CurrentLoop.crossoverOfGainRadPerS(wrong.voltPerAmp(), 16e-6);
        assertThat(real).isCloseTo(2 * 2 * Math.PI * 1000, within(1e-9));
        double margin = CurrentLoop.of(16e-6, 0.039, real, DELAY).phaseMarginRad();
        assertThat(Math.toDegrees(margin)).isCloseTo(45, within(1e-9));
    }

    @Test
    void finds_the_crossover_for_60_degrees() {
        double crossover = CurrentLoop.crossoverRadPerS(Math.PI / 3, DELAY);
        assertThat(crossover).isCloseTo(8378, within(0.5));
        assertThat(crossover / (2 * Math.PI)).isCloseTo(1333, within(0.5));
    }

    /** Pure delay of 1.5 periods T: margin 90° − 1.5 ω T (recomputed). */
    @ParameterizedTest
    @CsvSource({"0.1, 81.41", "0.2, 72.81", "0.3333333333, 61.35", "0.5, 47.03", "0.7, 29.84"})
    void keeps_the_margin_of_a_pure_delay(double crossoverTimesPeriod, double degrees) {
        CurrentLoop loop = CurrentLoop.of(1e-4, 1, crossoverTimesPeriod / 50e-6, 75e-6);
        assertThat(Math.toDegrees(loop.phaseMarginRad())).isCloseTo(degrees, within(5.1e-3));
    }

    @Test
    void refuses_nan() {
        assertThatThrownBy(() -> CurrentLoop.of(Double.NaN, 1, 1, 1)).hasMessageContaining("inductance");
        assertThatThrownBy(() -> CurrentLoop.crossoverRadPerS(2, 1)).hasMessageContaining("phase margin");
    }
}
