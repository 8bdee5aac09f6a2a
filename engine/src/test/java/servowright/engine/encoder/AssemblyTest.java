package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AssemblyTest {
    private static final RoundMagnet DISC = RoundMagnet.disc(6e-3, 2.5e-3);
    private static final Assembly CENTRED = Assembly.centred(DISC, 1.2, 1e-3);

    private static double degrees(FullTurn turn, int order) {
        return Math.toDegrees(turn.error().ripple(order).amplitudeRad());
    }

    private static FullTurn point(Assembly assembly) {
        return assembly.turn(new Sensing.Point(), 360);
    }

    private static Planar mm(double x, double y) {
        return new Planar(x, y).times(1e-3);
    }

    private static Planar degree(double x, double y) {
        return new Planar(Math.toRadians(x), Math.toRadians(y));
    }

    @Test
    void sensor_off_the_axis_gives_a_second_harmonic_and_a_magnet_off_the_axis_only_a_constant() {
        // Field in space, six by two and a half, 1.2 T, 1 mm (recomputed).
        assertThat(degrees(point(CENTRED.withOffsets(mm(0.3, 0), Planar.ZERO)), 2))
                .isCloseTo(0.0595, within(5e-5));
        FullTurn magnet = point(CENTRED.withOffsets(Planar.ZERO, Planar.along(0.3e-3, Math.PI / 4)));
        assertThat(Math.toDegrees(magnet.error().meanRad())).isCloseTo(-0.0595, within(5e-5));
        assertThat(Math.toDegrees(magnet.error().peakRad())).isLessThan(1e-10);
        assertThat(degrees(point(CENTRED.withOffsets(mm(0.3, 0), mm(0.3, 0))), 1))
                .isCloseTo(0.123, within(5e-4));
    }

    @Test
    void tilt_times_offset_gives_a_first_harmonic() {
        assertThat(degrees(point(CENTRED.withOffsets(Planar.ZERO, mm(0.3, 0)).withTilts(degree(3, 0), Planar.ZERO)), 1))
                .isCloseTo(0.394, within(5e-4));
        assertThat(degrees(point(CENTRED.withOffsets(mm(0.3, 0), Planar.ZERO).withTilts(Planar.ZERO, degree(0, 3))), 1))
                .isCloseTo(0.348, within(5e-4));
        assertThat(degrees(point(CENTRED.withTilts(degree(5, 0), Planar.ZERO)), 2))
                .isCloseTo(0.109, within(5e-4));
    }

    @Test
    void magnetisation_out_of_plane_times_tilt_does_not_depend_on_size_and_gap() {
        double eta = Math.toRadians(3);
        Assembly near = CENTRED.withElevation(eta).withTilts(degree(3, 0), Planar.ZERO);
        Assembly far = Assembly.centred(RoundMagnet.disc(12e-3, 3e-3), 1.1, 3e-3)
                .withElevation(eta)
                .withTilts(degree(3, 0), Planar.ZERO);
        assertThat(degrees(point(near), 1)).isCloseTo(0.3145, within(5e-4));
        assertThat(degrees(point(far), 1)).isCloseTo(0.3145, within(5e-4));
    }

    @Test
    void elevation_times_sensor_offset_gives_a_first_harmonic() {
        Assembly five = CENTRED.withElevation(Math.toRadians(5)).withOffsets(mm(0.5, 0), Planar.ZERO);
        assertThat(degrees(point(five), 1)).isCloseTo(1.105, within(5e-3));
    }

    @ParameterizedTest
    @CsvSource({"0.1, 0.021, 120.617", "0.3, 0.187, 121.0", "0.5, 0.498, 121.8"})
    void gradient_sensing_errs_three_times_as_much(double offset, double secondDegree, double leastMilliTesla) {
        FullTurn turn = CENTRED.withOffsets(mm(offset, 0), Planar.ZERO).turn(new Sensing.Gradient(1e-3), 360);
        assertThat(degrees(turn, 2)).isCloseTo(secondDegree, within(6e-4));
        assertThat(1e3 * turn.leastSignal()).isCloseTo(leastMilliTesla, within(0.1));
    }

    @ParameterizedTest
    // Both channels read at (+-r, 0), recomputed.
    @CsvSource({"0.1, 0.0065", "0.25, 0.041", "0.5, 0.172"})
    void separated_elements_err_even_when_centred(double r, double degree) {
        List<Planar> pair = List.of(mm(r, 0), mm(-r, 0));
        assertThat(degrees(CENTRED.turn(new Sensing.Elements(pair, pair), 360), 2))
                .isCloseTo(degree, within(6e-4));
        List<Planar> four = List.of(mm(r, 0), mm(-r, 0), mm(0, r), mm(0, -r));
        assertThat(degrees(CENTRED.turn(new Sensing.Elements(four, four), 360), 2))
                .isLessThan(1e-9);
    }

    @Test
    void an_axial_magnet_makes_no_turn() {
        Assembly axial = CENTRED.withElevation(Math.PI / 2);
        FullTurn turn = point(axial.withOffsets(mm(0.3, 0), mm(0.1, 0)));
        assertThat(turn.netTurns()).isZero();
        assertThat(1e3 * turn.leastSignal()).isBetween(11.0, 12.0);
        assertThat(point(axial.withOffsets(mm(0.1, 0), mm(0.3, 0))).netTurns()).isEqualTo(1);
    }

    @Test
    void a_good_mount_swings_little_and_makes_one_turn() {
        FullTurn turn = point(CENTRED.withOffsets(mm(0.3, 0), Planar.ZERO));
        assertThat(turn.netTurns()).isEqualTo(1);
        // 132.50 to 132.77 mT at 0.3 mm (recomputed).
        assertThat(turn.signalSwing()).isCloseTo(0.001, within(1e-4));
    }

    @Test
    void refuses_a_gap_of_zero_and_a_tilt_over_a_right_angle() {
        assertThatIllegalArgumentException().isThrownBy(() -> Assembly.centred(DISC, 1.2, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> CENTRED.withTilts(degree(95, 0), Planar.ZERO));
        assertThatIllegalArgumentException().isThrownBy(() -> new Sensing.Elements(List.of(), List.of(Planar.ZERO)));
        assertThatIllegalArgumentException().isThrownBy(() -> new Sensing.Gradient(0));
    }
}
