package servowright.engine.motor;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import servowright.engine.quantity.VoltageBasis;

class SpeedReachTest {

    private static final double RPM = Math.PI / 30;

    /** p 7, 2.5 mWb, 50 mΩ, 60 µH: invented surface-magnet motor, figures recomputed. */
    private static final Winding SURFACE = new Winding(0.05, 60e-6, 60e-6, 2.5e-3, 7);

    /** Six-pole interior-magnet motor of many university papers (figures from memory, results recomputed). */
    private static final Winding INTERIOR = new Winding(3.6, 36e-3, 51e-3, 0.545, 3);

    /** 24 V, space vector: 13.8564 V phase peak; then sinusoidal: 12 V. */
    @Test
    void reaches_the_speeds_of_the_surface_magnet_example() {
        double vector = 24 / Math.sqrt(3);
        assertThat(vector).isCloseTo(13.8564, within(5e-5));
        assertThat(SpeedReach.idealNoLoadMechRadPerS(SURFACE.constants(), vector) / RPM)
                .isCloseTo(7561.08, within(5e-3));
        assertThat(rpm(SURFACE, 0, 20, vector)).isCloseTo(6369.67, within(5e-3));
        assertThat(rpm(SURFACE, 0, 20, vector) * RPM).isCloseTo(667.0305, within(1e-4));
        assertThat(rpm(SURFACE.withPhaseOhm(0), 0, 20, vector)).isCloseTo(6816.49, within(5e-3));
        assertThat(SpeedReach.idealNoLoadMechRadPerS(SURFACE.constants(), 12) / RPM)
                .isCloseTo(6548.09, within(5e-3));
        assertThat(rpm(SURFACE, 0, 20, 12)).isCloseTo(5455.92, within(5e-3));
        assertThat(rpm(SURFACE.withPhaseOhm(0), -20, 0, vector)).isCloseTo(14540.5, within(5e-2));
        assertThat(SURFACE.torqueNewtonMetre(0, 20)).isCloseTo(0.525, within(1e-12));
    }

    /** 540 V: 311.769 V phase peak; base speed at the current of largest torque per ampere, with and without R. */
    @Test
    void reaches_the_base_speed_of_the_interior_magnet_example() {
        double limit = 540 / Math.sqrt(3);
        assertThat(limit).isCloseTo(311.769, within(5e-4));
        double ideal = rpm(INTERIOR.withPhaseOhm(0), -0.966390, 6.003840, limit);
        assertThat(ideal).isCloseTo(1667.78, within(5e-3));
        assertThat(ideal * RPM * 3).isCloseTo(523.9484, within(1e-3));
        double real = rpm(INTERIOR, -0.966390, 6.003840, limit);
        assertThat(real).isCloseTo(1558.50, within(5e-3));
        assertThat(real * RPM * 3).isCloseTo(489.6160, within(1e-3));
    }

    /** 24 V, 95 % of space vector, 150 rpm/V line peak, p 14, 0.1 Ω, 60 µH, 15 A (practitioner case, recomputed). */
    @Test
    void reaches_the_loaded_speed_of_the_geared_joint() {
        MotorConstants motor = MotorConstants.ofSpeedConstant(150 * RPM, VoltageBasis.LINE_PEAK);
        Winding winding = new Winding(0.1, 60e-6, 60e-6, motor.fluxLinkageWeberPeak(14), 14);
        double limit = 0.95 * 24 / Math.sqrt(3);
        assertThat(limit).isCloseTo(13.164, within(5e-4));
        assertThat(SpeedReach.idealNoLoadMechRadPerS(motor, limit) / RPM).isCloseTo(3420, within(0.5));
        assertThat(rpm(winding, 0, 15, limit)).isCloseTo(2884, within(0.5));
        assertThat(rpm(winding, 0, 15, limit) * RPM).isCloseTo(302.0, within(0.05));
        assertThat(rpm(winding.withInductance(0, 0), 0, 15, limit)).isCloseTo(3030, within(0.5));
        assertThat(rpm(winding, 0, 15, limit) * RPM / 36).isCloseTo(8.39, within(5e-3));
        assertThat(ElectricalSpeed.hertz(rpm(winding, 0, 15, limit) * RPM, 14)).isCloseTo(673, within(0.5));
        assertThat(winding.torqueNewtonMetre(0, 15)).isCloseTo(0.827, within(5e-4));
    }

    @Test
    void needs_exactly_the_limit_at_the_speed_it_gives() {
        for (double q : new double[] {20, -20, 0}) {
            double speed = SpeedReach.mechRadPerS(INTERIOR, -2, q / 4, 200).orElseThrow();
            assertThat(OperatingPoint.of(INTERIOR, -2, q / 4, speed).phasePeakVolt())
                    .isCloseTo(200, within(1e-9));
        }
    }

    @Test
    void brakes_at_a_higher_speed_than_it_drives() {
        assertThat(rpm(SURFACE, 0, -20, 12)).isGreaterThan(rpm(SURFACE, 0, 20, 12));
    }

    @Test
    void gives_no_speed_when_the_resistance_alone_needs_more() {
        assertThat(SpeedReach.mechRadPerS(SURFACE, 0, 300, 12)).isEmpty();
        assertThatThrownBy(() -> SpeedReach.mechRadPerS(SURFACE, 0, 1, Double.NaN))
                .hasMessageContaining("voltage limit");
    }

    @Test
    void gives_no_speed_limit_where_the_field_is_cancelled_and_nothing_else_needs_voltage() {
        Winding cancelled = new Winding(0, 1e-3, 1e-3, 1e-2, 4);
        assertThat(SpeedReach.mechRadPerS(cancelled, -10, 0, 12)).isEmpty();
    }

    /** Interior magnet motor at 75 Hz: 314.5 V line RMS of open-circuit EMF (figures from memory, recomputed). */
    @Test
    void makes_the_open_voltage_of_the_magnets() {
        double speed = ElectricalSpeed.mechRadPerS(75, 3);
        assertThat(SpeedReach.openLinePeakVolt(INTERIOR.constants(), speed) / Math.sqrt(2))
                .isCloseTo(314.5, within(0.05));
        assertThat(SpeedReach.openLinePeakVolt(INTERIOR.constants(), -speed))
                .isEqualTo(SpeedReach.openLinePeakVolt(INTERIOR.constants(), speed));
    }

    @Test
    void feeds_the_bus_exactly_above_the_speed_constant_times_bus_voltage() {
        MotorConstants motor = MotorConstants.ofSpeedConstant(150 * RPM, VoltageBasis.LINE_PEAK);
        assertThat(SpeedReach.feedingMechRadPerS(motor, 24, 0) / RPM).isCloseTo(3600, within(1e-9));
        assertThat(SpeedReach.feedingMechRadPerS(motor, 24, 0.7) / RPM).isCloseTo(25.4 * 150, within(1e-9));
    }

    private static double rpm(Winding winding, double dAmp, double qAmp, double volt) {
        return SpeedReach.mechRadPerS(winding, dAmp, qAmp, volt).orElseThrow() / RPM;
    }
}
