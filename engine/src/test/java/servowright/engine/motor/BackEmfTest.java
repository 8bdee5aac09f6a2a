package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import servowright.engine.quantity.Meter;
import servowright.engine.quantity.VoltageBasis;

class BackEmfTest {
    /** Golden example A (recomputed): p = 7, λ = 2.5 mWb; at 3000 rpm 350 Hz, phase peak 7 · 2.5 mWb · 314.159 = 5.4978 V. */
    @Test
    void gives_the_flux_linkage_of_golden_example_a_on_every_basis() {
        double phasePeak = 5.497787143782138;
        assertThat(BackEmf.fluxLinkageWeberPeak(phasePeak, VoltageBasis.PHASE_PEAK, 350))
                .isCloseTo(2.5e-3, within(1e-15));
        assertThat(BackEmf.fluxLinkageWeberPeak(phasePeak * Math.sqrt(3), VoltageBasis.LINE_PEAK, 350))
                .isCloseTo(2.5e-3, within(1e-15));
        assertThat(BackEmf.fluxLinkageWeberPeak(phasePeak * Math.sqrt(1.5), VoltageBasis.LINE_RMS, 350))
                .isCloseTo(2.5e-3, within(1e-15));
        assertThat(BackEmf.fluxLinkageWeberPeak(phasePeak / Math.sqrt(2), VoltageBasis.PHASE_RMS, 350))
                .isCloseTo(2.5e-3, within(1e-15));
    }

    /** Modelica Standard Library, SM_PermanentMagnetData: 112.3 V RMS per phase at 50 Hz; λ 0.505528 Wb (recomputed). */
    @Test
    void agrees_with_the_modelica_permanent_magnet_data() {
        assertThat(BackEmf.fluxLinkageWeberPeak(112.3, VoltageBasis.PHASE_RMS, 50))
                .isCloseTo(0.505528, within(5e-7));
    }

    /** Handbook range: neodymium with -0.11 %/K keeps 0.912 at 100 °C (value from memory, recomputed). */
    @Test
    void refers_warm_magnets_to_twenty_degrees() {
        assertThat(BackEmf.atTwentyCelsius(0.912, -0.0011, 373.15)).isCloseTo(1, within(1e-12));
        assertThat(BackEmf.atTwentyCelsius(1, -0.0011, 293.15)).isEqualTo(1);
    }

    /**
     * Fourier series of the trapezoid (recomputed): √(20/9) / (12/π² · √(3/2)) − 1 = 0.11 %; 2 / (√3 · 12/π²) − 1 = −5.0 % as a rule
     * from the line peak gives it (handbook figures for both seen); the flat tops of 2 E behind a rectifier, 2 π/3 / (√3 · 12/π²) − 1.
     */
    @Test
    void says_what_the_shape_does_to_each_reading() {
        for (Meter meter : Meter.values()) {
            assertThat(BackEmf.excess(meter, Waveform.SINE)).isCloseTo(0, within(1e-12));
        }
        assertThat(BackEmf.excess(Meter.TRUE_RMS, Waveform.TRAPEZOID_120)).isCloseTo(0.00108, within(5e-5));
        assertThat(BackEmf.excess(Meter.PEAK, Waveform.TRAPEZOID_120)).isCloseTo(-0.0503, within(5e-5));
        assertThat(BackEmf.excess(Meter.RECTIFIED_HELD, Waveform.TRAPEZOID_120)).isCloseTo(-0.0503, within(5e-5));
        assertThat(BackEmf.excess(Meter.RECTIFIED, Waveform.TRAPEZOID_120)).isCloseTo(-0.00546, within(5e-5));
        // 0.654 % below true RMS, which itself reads 0.108 % high.
        assertThat(BackEmf.excess(Meter.AVERAGING, Waveform.TRAPEZOID_120)).isCloseTo(-0.00546, within(5e-5));
    }

    /** Six pulses of the trapezoid, summed point by point over a turn: the rectifier passes the highest of the three line voltages. */
    @Test
    void a_rectifier_passes_flat_tops_of_a_trapezoid() {
        double sum = 0;
        int points = 36_000;
        for (int i = 0; i < points; i++) {
            double angle = 2 * Math.PI * (i + 0.5) / points;
            double a = trapezoid(angle);
            double b = trapezoid(angle - 2 * Math.PI / 3);
            double c = trapezoid(angle + 2 * Math.PI / 3);
            sum += Math.max(a, Math.max(b, c)) - Math.min(a, Math.min(b, c));
        }
        assertThat(sum / points).isCloseTo(Waveform.TRAPEZOID_120.sixPulseMeanPerPhasePeak(), within(1e-9));
    }

    /** Flat for 120 degrees, flanks of 60. */
    private static double trapezoid(double angle) {
        return Math.max(-1, Math.min(1, 6 / Math.PI * Math.asin(Math.sin(angle))));
    }

    @Test
    void refuses_what_is_no_voltage_or_frequency() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BackEmf.fluxLinkageWeberPeak(Double.NaN, VoltageBasis.LINE_PEAK, 50))
                .withMessageContaining("back-EMF");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BackEmf.fluxLinkageWeberPeak(1, VoltageBasis.LINE_PEAK, 0))
                .withMessageContaining("frequency");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BackEmf.atTwentyCelsius(1, -0.01, 400))
                .withMessageContaining("remaining share");
    }
}
