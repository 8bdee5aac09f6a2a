package servowright.engine.motion;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Offset.offset;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MotorDutyTest {

    private static final double RPM = Math.PI / 30;

    /** J 0.02 kg m² behind gear 9 with 85 %, rotor 6e-5, friction 0.5, gravity 1.5 N m at the load. */
    private static final GearedAxis AXIS = new GearedAxis(9, 0.85, 6e-5, 0.02, 0.5, 1.5);

    /** 1 rad up in 0.4 s by thirds, 0.2 s hold, back, 0.2 s hold (worked example, recomputed). */
    @Test
    void evaluates_the_worked_example() {
        TrapezoidMove up = TrapezoidMove.inThirds(1, 0.4, 0.2);
        assertThat(up.peakRadPerS()).isCloseTo(3.75, within(1e-12));
        assertThat(up.radPerS2()).isCloseTo(28.125, within(1e-9));
        List<Stretch> cycle = new ArrayList<>(up.stretches());
        cycle.addAll(up.back().stretches());
        MotorDuty duty = MotorDuty.of(AXIS, cycle);
        double[] torques = duty.torquesNewtonMetre().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        assertThat(torques)
                .containsExactly(
                        new double[] {0.350155, 0.261438, 0.172721, 0.166667, 0.026132, 0.094444, 0.162757, 0.166667},
                        offset(5.1e-7));
        assertThat(duty.rmsNewtonMetre()).isCloseTo(0.194427, within(5e-7));
        assertThat(duty.peakNewtonMetre()).isCloseTo(0.350155, within(5e-7));
        assertThat(duty.peakRadPerS() / RPM).isCloseTo(322.289, within(5e-4));
        assertThat(duty.cycleSecond()).isCloseTo(1.2, within(1e-12));
        assertThat(AXIS.inertiaRatio()).isCloseTo(4.1152, within(5e-5));
        assertThat(duty.drivingWatt()).isCloseTo(0.350155 * 33.75, within(1e-4));
        assertThat(duty.brakingWatt()).isCloseTo(0.162757 * 33.75, within(1e-4));
    }

    /** On the way down the load torque stays positive: gravity drives, the gear's loss helps to hold. */
    @Test
    void multiplies_by_the_efficiency_when_gravity_drives() {
        List<Stretch> down = TrapezoidMove.inThirds(-1, 0.4, 0).stretches();
        double[] load = {0.4375, 1.0, 1.5625};
        for (int i = 0; i < 3; i++) {
            assertThat(AXIS.loadNewtonMetre(down.get(i))).isCloseTo(load[i], within(1e-9));
        }
        Stretch steady = down.get(1);
        assertThat(AXIS.motorNewtonMetre(steady)).isCloseTo(1.0 * 0.85 / 9, within(1e-9));
    }

    @Test
    void matches_the_gear_to_a_pure_inertia() {
        double best = AXIS.inertiaMatchedRatio();
        assertThat(best).isCloseTo(Math.sqrt(0.02 / 6e-5), within(1e-12));
        for (double times : new double[] {0.8, 1.25}) {
            assertThat(torqueFor(best)).isLessThan(torqueFor(best * times));
        }
    }

    /** Same travel and time: thirds need 1.5, 4.5 and 3.6742, a triangle 2, 4 and 4 (recomputed). */
    @Test
    void compares_trapezoid_and_triangle() {
        TrapezoidMove thirds = TrapezoidMove.inThirds(1, 1, 0);
        assertThat(thirds.peakRadPerS()).isCloseTo(1.5, within(1e-12));
        assertThat(thirds.radPerS2()).isCloseTo(4.5, within(1e-12));
        assertThat(thirds.rmsRadPerS2()).isCloseTo(3.6742, within(5e-5));
        assertThat(thirds.rmsRadPerS2() / Math.sqrt(12) - 1).isCloseTo(0.0607, within(5e-5));
        TrapezoidMove triangle = TrapezoidMove.within(1, 100, 4, 0);
        assertThat(triangle.moveSecond()).isCloseTo(1, within(1e-12));
        assertThat(triangle.peakRadPerS()).isCloseTo(2, within(1e-12));
        assertThat(triangle.rmsRadPerS2()).isCloseTo(4, within(1e-12));
        assertThat(triangle.stretches()).hasSize(2);
    }

    /** Two axes, travel 1.0 and 0.4, speed 2 and 3, acceleration 10 and 5: 0.7 s and 0.565685 s (recomputed). */
    @ParameterizedTest
    @CsvSource({"1.0, 2, 10, 0.7", "0.4, 3, 5, 0.565685", "-0.4, 3, 5, 0.565685"})
    void takes_the_least_time(double travel, double speed, double acceleration, double second) {
        TrapezoidMove move = TrapezoidMove.within(travel, speed, acceleration, 0.1);
        assertThat(move.moveSecond()).isCloseTo(second, within(5e-7));
        assertThat(Math.signum(move.peakRadPerS())).isEqualTo(Math.signum(travel));
        double covered = move.stretches().stream()
                .mapToDouble(s -> s.second() * (s.startRadPerS() + s.endRadPerS()) / 2)
                .sum();
        assertThat(covered).isCloseTo(travel, within(1e-12));
    }

    @Test
    void gives_rms_speed_of_a_triangle_as_peak_over_root_three() {
        GearedAxis direct = new GearedAxis(1, 1, 1e-4, 1e-3, 0, 0);
        MotorDuty duty = MotorDuty.of(direct, TrapezoidMove.within(1, 100, 4, 0).stretches());
        assertThat(duty.rmsRadPerS()).isCloseTo(2 / Math.sqrt(3), within(1e-12));
    }

    @Test
    void refuses_stretches_through_zero_and_nan() {
        assertThatThrownBy(() -> new Stretch(1, -1, 1)).hasMessageContaining("sense");
        assertThatThrownBy(() -> new Stretch(Double.NaN, 0, 1)).hasMessageContaining("duration");
        assertThatThrownBy(() -> TrapezoidMove.within(0, 1, 1, 0)).hasMessageContaining("travel");
        assertThatThrownBy(() -> new GearedAxis(9, 1.1, 0, 0, 0, 0)).hasMessageContaining("efficiency");
        assertThatThrownBy(() -> MotorDuty.of(AXIS, List.of())).hasMessageContaining("stretches");
    }

    private static double torqueFor(double ratio) {
        GearedAxis axis = new GearedAxis(ratio, 1, 6e-5, 0.02, 0, 0);
        return axis.motorNewtonMetre(new Stretch(1, 0, 10));
    }
}
