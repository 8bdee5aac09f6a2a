package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import servowright.engine.motor.Saliency.TerminalPair;

class SaliencyTest {

    private static final Saliency ROTOR = new Saliency(60e-6, 75e-6, 0);

    /** L_d 60, L_q 75 µH at two rotor angles (recomputed). */
    @ParameterizedTest
    @CsvSource({"0, 127.5, 150, 127.5", "0.3, 136.1449, 147.3800, 121.4751"})
    void splits_three_pairs_at_one_unknown_position(double angle, double ab, double bc, double ca) {
        assertThat(ROTOR.betweenTerminalsHenry(TerminalPair.AB, angle)).isCloseTo(ab * 1e-6, within(5e-11));
        assertThat(ROTOR.betweenTerminalsHenry(TerminalPair.BC, angle)).isCloseTo(bc * 1e-6, within(5e-11));
        assertThat(ROTOR.betweenTerminalsHenry(TerminalPair.CA, angle)).isCloseTo(ca * 1e-6, within(5e-11));
        Saliency found = Saliency.fromThreePairs(ab * 1e-6, bc * 1e-6, ca * 1e-6);
        assertThat(found.dHenry()).isCloseTo(60e-6, within(1e-10));
        assertThat(found.qHenry()).isCloseTo(75e-6, within(1e-10));
        assertThat(found.electricalRad()).isCloseTo(angle, within(1e-5));
        double root = Math.sqrt(ab * ab + bc * bc + ca * ca - ab * bc - bc * ca - ca * ab);
        assertThat(found.qHenry() - found.dHenry()).isCloseTo(2.0 / 3 * root * 1e-6, within(1e-15));
    }

    @Test
    void comes_back_from_every_angle() {
        for (double angle = 0; angle < Math.PI; angle += 0.1) {
            Saliency found = Saliency.fromThreePairs(
                    ROTOR.betweenTerminalsHenry(TerminalPair.AB, angle),
                    ROTOR.betweenTerminalsHenry(TerminalPair.BC, angle),
                    ROTOR.betweenTerminalsHenry(TerminalPair.CA, angle));
            assertThat(Math.sin(found.electricalRad() - angle)).isCloseTo(0, within(1e-9));
        }
    }

    /** Between two terminals the extremes are 2 L_d and 2 L_q; one against two on the axes 1.5 L_d and 1.5 L_q. */
    @Test
    void shows_both_axes_at_the_terminals() {
        double least = Double.MAX_VALUE;
        double most = 0;
        for (double angle = 0; angle < Math.PI; angle += Math.PI / 360) {
            double henry = ROTOR.betweenTerminalsHenry(TerminalPair.AB, angle);
            least = Math.min(least, henry);
            most = Math.max(most, henry);
        }
        assertThat(least).isCloseTo(2 * 60e-6, within(1e-12));
        assertThat(most).isCloseTo(2 * 75e-6, within(1e-12));
        assertThat(ROTOR.oneAgainstTwoHenry(0)).isCloseTo(1.5 * 60e-6, within(1e-15));
        assertThat(ROTOR.oneAgainstTwoHenry(Math.PI / 2)).isCloseTo(1.5 * 75e-6, within(1e-15));
    }

    @Test
    void refuses_readings_that_no_winding_can_show() {
        assertThatThrownBy(() -> Saliency.fromThreePairs(1e-6, 1e-6, 100e-6)).hasMessageContaining("d inductance");
        assertThatThrownBy(() -> Saliency.fromThreePairs(1e-6, Double.NaN, 1e-6))
                .hasMessageContaining("b to c");
    }
}
