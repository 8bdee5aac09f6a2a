package servowright.engine.prediction;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import servowright.engine.known.Outcome;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.SensorFigure;

class MountStudyTest {
    private static Outcome<Mount> arm(Invented machine) {
        return machine.predictions().axes().get(0).mount().orElseThrow();
    }

    private static Mount answered(Invented machine) {
        return arm(machine).found().orElseThrow();
    }

    @Test
    void field_of_six_by_two_and_a_half_at_one_millimetre_is_132_909_millitesla_at_20_degrees() {
        // Integrated over the surface charge (recomputed).
        Mount mount = answered(Invented.sound()
                .arm(AxisFigure.MAGNET_DIAMETER, "6 mm")
                .arm(AxisFigure.MAGNET_LENGTH, "2.5 mm")
                .arm(AxisFigure.GAP, "0.65 mm")
                .coldest("20 degC")
                .warmest("20 degC"));
        assertThat(1e3 * mount.strongest().si()).isCloseTo(132.909, within(5e-4));
        assertThat(mount.weakest().si()).isCloseTo(mount.strongest().si(), within(1e-12));
        assertThat(mount.strongest().standardUncertainty()).isZero();
    }

    @Test
    void warm_magnets_are_weaker_and_a_spread_of_the_gap_spreads_the_field() {
        Mount mount = answered(Invented.sound());
        assertThat(mount.weakest().si() / mount.strongest().si())
                .isCloseTo((1 - 0.0012 * 10) / (1 + 0.0012 * 20), within(1e-9));
        assertThat(mount.weakest().standardUncertainty()).isPositive();
        // p kappa-free: 7 pole pairs, 0.2 mm, 1 degree.
        assertThat(Math.toDegrees(mount.tiltError().orElseThrow().si())).isBetween(0.2, 0.6);
        assertThat(mount.offsetError().orElseThrow().si())
                .isLessThan(mount.tiltError().orElseThrow().si());
    }

    @Test
    void depth_not_stated_is_taken_as_a_range() {
        Mount mount = answered(Invented.sound().without(SensorFigure.DEPTH));
        assertThat(mount.depthStated()).isFalse();
        assertThat(mount.bareGap().si()).isGreaterThan(mount.strongest().si());
    }

    @Test
    void magnet_without_size_is_asked_for_and_no_mount_is_silent() {
        assertThat(arm(Invented.sound().without(AxisFigure.MAGNET_LENGTH)).found())
                .isEmpty();
        assertThat(Invented.sound()
                        .without(AxisFigure.GAP)
                        .without(AxisFigure.MAGNET_DIAMETER)
                        .predictions()
                        .axes()
                        .get(0)
                        .mount())
                .isEmpty();
        assertThat(answered(Invented.sound().without(AxisFigure.SENSOR_OFFSET)).tiltError())
                .isEmpty();
    }
}
