package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
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

    /** Fourier series of the trapezoid: √(20/9) / (12/π² · √(3/2)) − 1 = 0.11 % (recomputed). */
    @Test
    void says_how_much_a_true_rms_meter_reads_high() {
        assertThat(BackEmf.trueRmsExcess(Waveform.SINE)).isCloseTo(0, within(1e-12));
        assertThat(BackEmf.trueRmsExcess(Waveform.TRAPEZOID_120)).isCloseTo(0.00108, within(5e-5));
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
