package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HotEffectTest {

    private static final double COLD = 293.15;

    /** 120 °C copper (234.5) and neodymium magnets against 20 °C: 1.3929, 0.89, 1.7585 (recomputed). */
    @Test
    void costs_three_quarters_more_loss_for_the_same_torque() {
        HotEffect hot =
                HotEffect.of(Conductor.COPPER_IACS, COLD, COLD + 100, MagnetMaterial.NEODYMIUM, COLD, COLD + 100);
        assertThat(hot.resistanceFactor()).isCloseTo(1.3929, within(5e-5));
        assertThat(hot.fluxFactor()).isCloseTo(0.89, within(1e-12));
        assertThat(hot.lossForSameTorque()).isCloseTo(1.7585, within(5e-5));
        assertThat(hot.torqueForSameLoss()).isCloseTo(1 / Math.sqrt(1.7585), within(5e-5));
        Winding warm = hot.applyTo(new Winding(0.05, 1e-4, 1e-4, 2.5e-3, 7));
        assertThat(warm.phaseOhm()).isCloseTo(0.05 * hot.resistanceFactor(), within(1e-15));
        assertThat(warm.constants().perRootWatt(warm.phaseOhm())
                        / MotorConstants.ofFluxLinkage(2.5e-3, 7).perRootWatt(0.05))
                .isCloseTo(hot.torqueForSameLoss(), within(1e-12));
    }

    /** Flux at 100 °C against 20 °C (handbook coefficients from memory, recomputed). */
    @ParameterizedTest
    @CsvSource({"NEODYMIUM, 0.912", "SAMARIUM_COBALT, 0.968", "FERRITE, 0.848"})
    void loses_flux_when_warm(MagnetMaterial magnets, double factor) {
        assertThat(magnets.fluxFactor(COLD, COLD + 80)).isCloseTo(factor, within(5e-4));
        assertThat(magnets.fluxFactor(COLD + 80, COLD)).isCloseTo(1 / factor, within(1e-3));
        assertThat(magnets.perKelvin()).isNegative();
        assertThat(magnets.perKelvinHalfRange()).isBetween(0.00005, 0.0003);
        assertThat(magnets.words()).isNotEmpty();
    }

    @Test
    void refuses_nan_and_magnets_warmer_than_their_line_goes() {
        assertThatThrownBy(() -> new HotEffect(Double.NaN, 1)).hasMessageContaining("resistance factor");
        assertThatThrownBy(() -> MagnetMaterial.FERRITE.fluxFactor(COLD, COLD + 600))
                .hasMessageContaining("share");
    }
}
