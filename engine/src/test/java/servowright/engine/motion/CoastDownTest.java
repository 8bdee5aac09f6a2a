package servowright.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.api.Assertions.withinPercentage;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoastDownTest {

    private static final CoastDown LINEAR = new CoastDown(4e-4, 0.01, 2e-5, 0);

    /** 20 ln 2 s to standstill from 500 rad/s, 106.530660 rad/s after 10 s (closed form, recomputed). */
    @Test
    void runs_out_with_friction_and_viscous_drag() {
        assertThat(LINEAR.stopSecond(500).orElseThrow()).isCloseTo(13.862944, within(5e-7));
        assertThat(LINEAR.radPerS(500, 10)).isCloseTo(106.530660, within(5e-7));
        assertThat(LINEAR.radPerS(500, 20)).isZero();
        assertThat(LINEAR.lossWatt(300)).isCloseTo(4.8, within(1e-12));
    }

    /** b² = 4 T_c k makes the answer rational: 1000/11 rad/s after 10 s (recomputed). */
    @Test
    void is_exact_where_the_root_is_zero() {
        CoastDown windy = new CoastDown(4e-4, 0.01, 2e-5, 1e-8);
        assertThat(windy.radPerS(500, 10)).isCloseTo(1000.0 / 11, within(1e-9));
        assertThat(windy.radPerS(500, windy.stopSecond(500).orElseThrow() * 0.999999))
                .isCloseTo(0, within(1e-3));
    }

    /** Against a Runge-Kutta integration of the same equation, for a real, a zero and an imaginary root. */
    @ParameterizedTest
    @CsvSource({"0.01, 2e-5, 1e-9", "0.01, 2e-5, 1e-8", "0.01, 2e-5, 5e-8", "0.01, 0, 5e-8", "0, 2e-5, 1e-8"})
    void agrees_with_stepwise_integration(double coulomb, double viscous, double quadratic) {
        CoastDown run = new CoastDown(4e-4, coulomb, viscous, quadratic);
        double speed = 500;
        double step = 1e-3;
        for (int i = 0; i < 5000; i++) {
            double k1 = -run.dragNewtonMetre(speed) / 4e-4;
            double k2 = -run.dragNewtonMetre(speed + step / 2 * k1) / 4e-4;
            double k3 = -run.dragNewtonMetre(speed + step / 2 * k2) / 4e-4;
            double k4 = -run.dragNewtonMetre(speed + step * k3) / 4e-4;
            speed += step / 6 * (k1 + 2 * k2 + 2 * k3 + k4);
        }
        assertThat(run.radPerS(500, 5)).isCloseTo(speed, withinPercentage(1e-7));
    }

    @Test
    void never_stops_without_dry_friction() {
        assertThat(new CoastDown(1e-4, 0, 1e-5, 0).stopSecond(100)).isEmpty();
        assertThat(LINEAR.stopSecond(0)).hasValue(0);
    }

    /** 5e-5 kg m² added, 6 s becomes 9 s: 1.0e-4 kg m² (recomputed). */
    @Test
    void weighs_a_rotor_by_adding_inertia() {
        assertThat(CoastDown.inertiaKgM2(5e-5, 6, 9)).isCloseTo(1.0e-4, within(1e-15));
        assertThatThrownBy(() -> CoastDown.inertiaKgM2(5e-5, 9, 6)).hasMessageContaining("longer");
    }

    @Test
    void refuses_nan() {
        assertThatThrownBy(() -> new CoastDown(1, Double.NaN, 0, 0)).hasMessageContaining("drag");
        assertThatThrownBy(() -> LINEAR.radPerS(Double.NaN, 1)).hasMessageContaining("speed");
    }
}
