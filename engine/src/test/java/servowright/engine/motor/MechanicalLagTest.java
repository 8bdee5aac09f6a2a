package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.VoltageBasis;

/** The lag of a shaft on a voltage against its differential equation in small steps, and against the catalogue formula. */
class MechanicalLagTest {
    private static final MotorConstants HUB = MotorConstants.ofFluxLinkage(13.1e-3, 10);
    private static final double OHM = 0.119;
    private static final double INERTIA = 9.62e-4;

    /** One time constant after a step of 1 V the speed has 1 − 1/e of its end: the two equations, integrated here. */
    @Test
    void a_step_of_voltage_rises_as_the_equations_say() {
        MechanicalLag lag = MechanicalLag.of(HUB, OHM, INERTIA);
        double speed = 0;
        int steps = 100_000;
        for (int i = 0; i < steps; i++) {
            double amp = (1 - 0.131 * speed) / OHM;
            speed += 1.5 * 0.131 * amp / INERTIA * lag.tauSecond() / steps;
        }
        assertThat(speed).isCloseTo((1 - Math.exp(-1)) * lag.radPerSecondPerVolt(), within(1e-4));
        assertThat(lag.radPerSecondPerVolt()).isCloseTo(1 / 0.131, within(1e-12));
    }

    /** τ = R J / (k_M k_E) with terminal resistance and block commutation, the usual form of catalogues (recalled): π²/9 as long. */
    @Test
    void the_catalogue_figure_is_longer_by_a_tenth() {
        double catalogue = 2
                * OHM
                * INERTIA
                / (HUB.torqueConstant(CurrentBasis.SIX_STEP) * HUB.emfConstant(VoltageBasis.SIX_STEP));
        assertThat(catalogue / MechanicalLag.of(HUB, OHM, INERTIA).tauSecond())
                .isCloseTo(Math.PI * Math.PI / 9, within(1e-9));
    }

    @Test
    void refuses_a_shaft_without_inertia_or_resistance() {
        assertThatIllegalArgumentException().isThrownBy(() -> MechanicalLag.of(HUB, OHM, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> MechanicalLag.of(HUB, Double.NaN, INERTIA));
    }
}
