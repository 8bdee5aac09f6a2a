package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CurrentAngleTest {

    /** Six-pole interior-magnet motor of many university papers (figures from memory, results recomputed). */
    private static final Winding INTERIOR = new Winding(3.6, 36e-3, 51e-3, 0.545, 3);

    private static final Winding SURFACE = new Winding(0.05, 60e-6, 60e-6, 2.5e-3, 7);
    private static final double LIMIT = 540 / Math.sqrt(3);
    private static final double RATED = 4.3 * Math.sqrt(2);

    @ParameterizedTest
    @CsvSource({
        "6.08112, -0.966390, 6.003840, 15.11606",
        "9.12168, -2.057109, 8.886693, 23.02857",
        "12.16224, -3.425341, 11.669920, 31.31869"
    })
    void makes_most_torque_per_ampere(double amp, double d, double q, double torque) {
        CurrentAngle best = CurrentAngle.mostTorquePerAmpere(INTERIOR, amp);
        assertThat(best.dAmp()).isCloseTo(d, within(5e-6));
        assertThat(best.qAmp()).isCloseTo(q, within(5e-6));
        assertThat(INTERIOR.torqueNewtonMetre(best.dAmp(), best.qAmp())).isCloseTo(torque, within(5e-5));
    }

    @Test
    void beats_its_neighbours_and_the_plain_q_axis() {
        CurrentAngle best = CurrentAngle.mostTorquePerAmpere(INTERIOR, RATED);
        double most = INTERIOR.torqueNewtonMetre(best.dAmp(), best.qAmp());
        assertThat(INTERIOR.torqueNewtonMetre(0, RATED)).isCloseTo(14.914, within(5e-4));
        for (double shift : new double[] {-0.05, 0.05}) {
            double d = best.dAmp() + shift;
            assertThat(INTERIOR.torqueNewtonMetre(d, Math.sqrt(RATED * RATED - d * d)))
                    .isLessThan(most);
        }
    }

    @Test
    void uses_no_d_current_without_saliency_and_positive_with_the_reverse() {
        assertThat(CurrentAngle.mostTorquePerAmpere(SURFACE, 20).dAmp()).isZero();
        assertThat(CurrentAngle.mostTorquePerAmpere(SURFACE.withInductance(75e-6, 60e-6), 20)
                        .dAmp())
                .isPositive();
        assertThat(CurrentAngle.mostTorquePerAmpere(INTERIOR, 0)).isEqualTo(new CurrentAngle(0, 0));
    }

    /** Field weakening at the rated current, speed in units of the ideal base speed 523.9484 electrical rad/s. */
    @ParameterizedTest
    @CsvSource({
        "1.2, -3.375587, 5.058202, 13.557763",
        "1.4, -4.686532, 3.875102, 10.729542",
        "1.5, -5.133814, 3.259441, 9.123280",
        "1.6, -5.492631, 2.609791, 7.368099"
    })
    void weakens_the_field(double times, double d, double q, double torque) {
        CurrentAngle found = CurrentAngle.weakenedField(INTERIOR, RATED, LIMIT, times * 523.9484 / 3)
                .orElseThrow();
        assertThat(found.dAmp()).isCloseTo(d, within(5e-6));
        assertThat(found.qAmp()).isCloseTo(q, within(1e-5));
        assertThat(INTERIOR.torqueNewtonMetre(found.dAmp(), found.qAmp())).isCloseTo(torque, within(3e-5));
    }

    @Test
    void stays_at_most_torque_per_ampere_below_base_speed_and_ends_at_the_top() {
        assertThat(CurrentAngle.weakenedField(INTERIOR, RATED, LIMIT, 500.0 / 3))
                .hasValue(CurrentAngle.mostTorquePerAmpere(INTERIOR, RATED));
        double top = CurrentAngle.topMechRadPerS(INTERIOR, RATED, LIMIT).orElseThrow() * 3;
        assertThat(top).isCloseTo(956.1132, within(2e-4)); // recomputed; 1.824823 times the base speed
        assertThat(top / 523.9484).isCloseTo(1.824823, within(1e-6));
        assertThat(CurrentAngle.weakenedField(INTERIOR, RATED, LIMIT, top / 3 * 1.001))
                .isEmpty();
        assertThat(CurrentAngle.weakenedField(INTERIOR, RATED, LIMIT, top / 3 * 0.999999)
                        .orElseThrow()
                        .qAmp())
                .isLessThan(0.02);
    }

    @ParameterizedTest
    @CsvSource({"60e-6, 60e-6", "75e-6, 60e-6", "60e-6, 75e-6"})
    void meets_the_voltage_whatever_the_saliency(double dHenry, double qHenry) {
        Winding winding = SURFACE.withInductance(dHenry, qHenry).withPhaseOhm(0);
        CurrentAngle found =
                CurrentAngle.weakenedField(winding, 20, 13.8564, 900).orElseThrow();
        assertThat(OperatingPoint.of(winding, found.dAmp(), found.qAmp(), 900).phasePeakVolt())
                .isCloseTo(13.8564, within(1e-9));
        assertThat(Math.hypot(found.dAmp(), found.qAmp())).isCloseTo(20, within(1e-9));
    }

    @Test
    void knows_the_characteristic_current_and_what_it_does_to_the_top_speed() {
        assertThat(CurrentAngle.characteristicAmp(SURFACE)).isCloseTo(41.67, within(5e-3));
        assertThat(CurrentAngle.characteristicAmp(INTERIOR)).isCloseTo(15.139, within(5e-4));
        double top = CurrentAngle.topMechRadPerS(SURFACE, 20, 24 / Math.sqrt(3)).orElseThrow();
        assertThat(top * 30 / Math.PI).isCloseTo(14540.5, within(0.05));
        assertThat(CurrentAngle.topMechRadPerS(SURFACE, 42, 24 / Math.sqrt(3))).isEmpty();
        assertThatThrownBy(() -> CurrentAngle.characteristicAmp(SURFACE.withInductance(0, 0)))
                .hasMessageContaining("d inductance");
    }
}
