package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.function.UnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RoundMagnetTest {
    private static final RoundMagnet DISC = RoundMagnet.disc(6e-3, 2.5e-3);
    private static final Vector ALONG_X = new Vector(1.2, 0, 0);
    private static final Vector ALONG_Z = new Vector(0, 0, 1.2);

    private static Vector millimetre(double x, double y, double z) {
        return new Vector(x, y, z).times(1e-3);
    }

    private static void assertClose(Vector actual, Vector expected, double relative) {
        assertThat(actual.minus(expected).length()).isLessThan(relative * expected.length());
    }

    @ParameterizedTest
    // Integrated over the surface charge, six digits after the point in mT (recomputed).
    @CsvSource({
        "0, 0, 2.25, -132.908650905, 0, 0",
        "0, 0, 0, 969.230769231, 0, 0",
        "0.3, 0.4, 2.25, -132.237520718, 0.380666596, 17.533558525",
        "1e-6, 2e-6, 2.25, -132.908650905, 0, 0.000057819",
        "3, 0, 2.25, -4.759543811, 0, 176.900300139",
        "2.999, 0, 2.25, -4.872758618, 0, 176.916788188",
        "0, 3, 2.25, -101.416348178, 0, 0",
        "5, 0, 0, 132.727577967, 0, 0",
        "20, 10, 15, 0.223207281, 0.284148230, 0.431344801",
        "-2, 0.5, -0.9, 918.601782636, 12.376078953, 143.402233184"
    })
    void agrees_with_integrated_points_across(double x, double y, double z, double bx, double by, double bz) {
        assertClose(DISC.fieldTesla(ALONG_X, millimetre(x, y, z)), new Vector(bx, by, bz).times(1e-3), 5e-9);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 0, 2.25, 0, 0, 265.817301809",
        "3, 0, 2.25, 176.900300139, 0, 106.175891989",
        "5, 0, 0, 0, 0, -72.666528635",
        "1, 1, 0.5, 33.707790423, 33.707790423, 503.346308882"
    })
    void agrees_with_integrated_points_along(double x, double y, double z, double bx, double by, double bz) {
        assertClose(DISC.fieldTesla(ALONG_Z, millimetre(x, y, z)), new Vector(bx, by, bz).times(1e-3), 1e-9);
    }

    @Test
    void agrees_with_the_documented_value_of_a_general_field_library() {
        // Documentation of the library's cylinder: polarisation (0.1, 0.2, 0.3) T, 10 x 10 mm, at (10, 10, 10) mm
        // (seen).
        double permeability = 4e-7 * Math.PI;
        Vector field = RoundMagnet.disc(10e-3, 10e-3)
                .fieldTesla(new Vector(0.1, 0.2, 0.3), millimetre(10, 10, 10))
                .times(1 / permeability);
        assertThat(field.x()).isCloseTo(4849.913, within(5e-4));
        assertThat(field.y()).isCloseTo(3883.178, within(5e-4));
        assertThat(field.z()).isCloseTo(2739.732, within(5e-4));
    }

    @Test
    void trapezoid_and_elliptic_integrals_agree_where_both_hold() {
        for (double rho = 0.2e-3; rho < 9e-3; rho += 0.13e-3) {
            CylinderKernel one = CylinderKernel.byElliptic(3e-3, 1.25e-3, rho, 2.25e-3);
            CylinderKernel other = CylinderKernel.byTrapezoid(3e-3, 1.25e-3, rho, 2.25e-3, 50);
            if (Math.abs(Math.log(rho / 3e-3)) > 0.1) {
                assertThat(one.radial()).isCloseTo(other.radial(), within(1e-10));
                assertThat(one.around()).isCloseTo(other.around(), within(1e-10));
                assertThat(one.crossed()).isCloseTo(other.crossed(), within(1e-10));
                assertThat(one.axial()).isCloseTo(other.axial(), within(1e-10));
            }
        }
    }

    @Test
    void magnet_scaled_with_its_distances_has_the_same_field() {
        RoundMagnet larger = RoundMagnet.disc(42e-3, 17.5e-3);
        assertClose(
                larger.fieldTesla(ALONG_X, millimetre(7.7, -4.9, 15.75)),
                DISC.fieldTesla(ALONG_X, millimetre(1.1, -0.7, 2.25)),
                1e-13);
    }

    @Test
    void field_follows_the_remanence() {
        assertClose(
                DISC.fieldTesla(ALONG_X.times(2), millimetre(1.1, -0.7, 2.25)),
                DISC.fieldTesla(ALONG_X, millimetre(1.1, -0.7, 2.25)).times(2),
                1e-14);
    }

    @Test
    void far_away_it_is_a_dipole() {
        // Dipole of moment Br pi R^2 L / mu0, any textbook on magnetism.
        Vector place = millimetre(300, 200, 500);
        double r = place.length();
        Vector moment = new Vector(0.7, 0, 0.9).times(DISC.volumeCubicMetre() / (4 * Math.PI));
        Vector dipole = place.times(3 * moment.dot(place) / Math.pow(r, 5)).minus(moment.times(Math.pow(r, -3)));
        assertClose(DISC.fieldTesla(new Vector(0.7, 0, 0.9), place), dipole, 1e-4);
    }

    @Test
    void mirrored_in_its_middle_plane_only_the_normal_part_turns_over() {
        Vector above = DISC.fieldTesla(ALONG_X, millimetre(1.1, -0.7, 2.25));
        Vector below = DISC.fieldTesla(ALONG_X, millimetre(1.1, -0.7, -2.25));
        assertClose(below, new Vector(above.x(), above.y(), -above.z()), 1e-14);
    }

    @ParameterizedTest
    @CsvSource({"1.1, -0.7, 2.25", "3.05, 0.4, 1.9", "4, -3, 1", "0.05, 0.02, 1.5"})
    void outside_it_has_neither_sources_nor_curl(double x, double y, double z) {
        UnaryOperator<Vector> field = place -> DISC.fieldTesla(new Vector(0.7, 0.2, 0.9), place);
        Vector place = millimetre(x, y, z);
        double h = 1e-6;
        Vector dx = slope(field, place, new Vector(h, 0, 0));
        Vector dy = slope(field, place, new Vector(0, h, 0));
        Vector dz = slope(field, place, new Vector(0, 0, h));
        double scale = dx.length() + dy.length() + dz.length();
        assertThat(dx.x() + dy.y() + dz.z()).isCloseTo(0, within(1e-6 * scale));
        assertThat(dy.z() - dz.y()).isCloseTo(0, within(1e-6 * scale));
        assertThat(dz.x() - dx.z()).isCloseTo(0, within(1e-6 * scale));
        assertThat(dx.y() - dy.x()).isCloseTo(0, within(1e-6 * scale));
    }

    private static Vector slope(UnaryOperator<Vector> field, Vector at, Vector step) {
        return field.apply(at.plus(step)).minus(field.apply(at.minus(step))).times(0.5 / step.length());
    }

    @Test
    void magnets_along_and_across_are_reciprocal() {
        assertThat(DISC.fieldTesla(ALONG_Z, millimetre(0.5, 0, 2.25)).x())
                .isCloseTo(DISC.fieldTesla(ALONG_X, millimetre(0.5, 0, 2.25)).z(), within(1e-15));
    }

    @Test
    void ring_is_the_disc_less_its_bore() {
        RoundMagnet ring = RoundMagnet.ring(6e-3, 2e-3, 2.5e-3);
        Vector place = millimetre(0.4, 0.3, 2.25);
        Vector bore = RoundMagnet.disc(2e-3, 2.5e-3).fieldTesla(ALONG_X, place);
        assertClose(
                ring.fieldTesla(ALONG_X, place), DISC.fieldTesla(ALONG_X, place).minus(bore), 1e-13);
        assertThat(ring.onAxis(1.2, 1e-3).strengthTesla())
                .isCloseTo(-ring.fieldTesla(ALONG_X, millimetre(0, 0, 2.25)).x(), within(1e-14));
        assertThat(ring.volumeCubicMetre()).isCloseTo(Math.PI * 8e-6 * 2.5e-3, within(1e-20));
    }

    @Test
    void refuses_its_mantle_and_edges_and_allows_the_same_radius_above_them() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DISC.fieldTesla(ALONG_X, millimetre(3, 0, 1.25)))
                .withMessageContaining("edge");
        assertThatIllegalArgumentException().isThrownBy(() -> DISC.fieldTesla(ALONG_X, millimetre(0, 3, 0)));
        RoundMagnet ring = RoundMagnet.ring(6e-3, 2e-3, 2.5e-3);
        assertThatIllegalArgumentException().isThrownBy(() -> ring.fieldTesla(ALONG_X, millimetre(1, 0, 0.2)));
        assertThat(ring.onMantle(millimetre(1, 0, 1.3))).isFalse();
    }

    @Test
    void refuses_sizes_that_are_none() {
        assertThatIllegalArgumentException().isThrownBy(() -> RoundMagnet.disc(Double.NaN, 1));
        assertThatIllegalArgumentException().isThrownBy(() -> RoundMagnet.disc(1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> RoundMagnet.ring(6e-3, 6e-3, 1e-3));
    }

    @Test
    void six_by_two_and_a_half_at_one_millimetre() {
        AxisField axis = DISC.onAxis(1.2, 1e-3);
        assertThat(1e3 * axis.strengthTesla()).isCloseTo(132.909, within(5e-4));
        assertThat(axis.slopeTeslaPerMetre()).isCloseTo(-57.8, within(0.05));
        assertThat(1e-6 * axis.kappaPerSquareMetre()).isCloseTo(-0.01128, within(5e-6));
        assertThat(1e-3 * axis.relativeSlopePerMetre()).isCloseTo(-0.435, within(5e-4));
        assertThat(1e3 * axis.alongAxisTesla()).isCloseTo(265.8173, within(5e-4));
    }

    @Test
    void derivatives_on_the_axis_are_those_of_the_field() {
        double h = 1e-5;
        AxisField at = DISC.onAxis(1.2, 1e-3);
        AxisField above = DISC.onAxis(1.2, 1e-3 + h);
        AxisField below = DISC.onAxis(1.2, 1e-3 - h);
        assertThat((above.strengthTesla() - below.strengthTesla()) / (2 * h))
                .isCloseTo(at.slopeTeslaPerMetre(), within(1e-3));
        assertThat((above.slopeTeslaPerMetre() - below.slopeTeslaPerMetre()) / (2 * h))
                .isCloseTo(at.curvatureTeslaPerSquareMetre(), within(1.0));
        assertThat((above.curvatureTeslaPerSquareMetre() - below.curvatureTeslaPerSquareMetre()) / (2 * h))
                .isCloseTo(at.thirdTeslaPerCubicMetre(), within(2e3));
    }

    @ParameterizedTest
    // Inverted table of gaps, Br 1.2 T (recomputed).
    @CsvSource({"6, 90, 1.84", "6, 70, 2.35", "6, 50, 3.05", "6, 20, 5.16", "8, 60, 3.12", "10, 40, 4.78"})
    void finds_the_gap_for_a_field(double diameter, double milliTesla, double gap) {
        assertThat(1e3
                        * RoundMagnet.disc(diameter * 1e-3, 2.5e-3)
                                .widestGapMetre(1.2, milliTesla * 1e-3)
                                .orElseThrow())
                .isCloseTo(gap, within(0.0051));
    }

    @Test
    void finds_no_gap_for_a_field_it_never_has() {
        assertThat(DISC.widestGapMetre(1.2, 0.5)).isEmpty();
    }

    @ParameterizedTest
    // Gap at the inflection (recomputed).
    @CsvSource({"5, 2.5, 0.37", "6, 2.5, 0.56", "8, 3, 0.84", "12, 3, 1.73"})
    void finds_the_gap_without_eccentricity_error(double diameter, double length, double gap) {
        assertThat(1e3
                        * RoundMagnet.disc(diameter * 1e-3, length * 1e-3)
                                .gapWithoutEccentricityErrorMetre()
                                .orElseThrow())
                .isCloseTo(gap, within(0.006));
    }
}
