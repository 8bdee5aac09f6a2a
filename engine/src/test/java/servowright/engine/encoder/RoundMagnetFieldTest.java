package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The whole table of field points, each integrated independently over the surface charge (recomputed). */
class RoundMagnetFieldTest {

    @Test
    void agrees_with_every_integrated_point_to_1e_9_of_the_larger_component() {
        List<Map<String, String>> rows = ReferenceData.rows("magnet-refpoints.csv");
        assertThat(rows).hasSize(48);
        for (Map<String, String> row : rows) {
            Vector expected = new Vector(number(row, "Bx_mT"), number(row, "By_mT"), number(row, "Bz_mT")).times(1e-3);
            double larger = Math.max(Math.abs(expected.x()), Math.max(Math.abs(expected.y()), Math.abs(expected.z())));
            Vector difference = field(row).minus(expected);
            assertThat(difference.length() / larger).as(row.toString()).isLessThan(1e-9);
        }
    }

    private static Vector field(Map<String, String> row) {
        RoundMagnet magnet = RoundMagnet.disc(1e-3 * number(row, "D_mm"), 1e-3 * number(row, "L_mm"));
        boolean axial = ReferenceData.text(row, "magnetisation").equals("axial");
        Vector polarisation = (axial ? new Vector(0, 0, 1) : new Vector(1, 0, 0)).times(number(row, "Br_T"));
        return magnet.fieldTesla(
                polarisation,
                new Vector(number(row, "x_mm"), number(row, "y_mm"), number(row, "z_mm_from_centre")).times(1e-3));
    }

    @Test
    void agrees_with_the_gap_curves() {
        Map<String, RoundMagnet> magnets = Map.of(
                "4x4", RoundMagnet.disc(4e-3, 4e-3),
                "5x2.5", RoundMagnet.disc(5e-3, 2.5e-3),
                "6x2.5", RoundMagnet.disc(6e-3, 2.5e-3),
                "8x2.5", RoundMagnet.disc(8e-3, 2.5e-3),
                "8x3", RoundMagnet.disc(8e-3, 3e-3),
                "10x2.5", RoundMagnet.disc(10e-3, 2.5e-3),
                "12x3", RoundMagnet.disc(12e-3, 3e-3));
        for (Map<String, String> row : ReferenceData.rows("magnet-gap-curves.csv")) {
            double gap = 1e-3 * number(row, "gap_mm");
            magnets.forEach(
                    (name, magnet) -> assertThat(1e3 * magnet.onAxis(1.2, gap).strengthTesla())
                            .as(name + " at " + gap)
                            .isCloseTo(number(row, name), within(0.0051)));
            AxisField six = RoundMagnet.disc(6e-3, 2.5e-3).onAxis(1.2, gap);
            assertThat(1e-6 * six.kappaPerSquareMetre()).isCloseTo(number(row, "kappa_6x2.5_per_mm2"), within(5.1e-6));
            assertThat(six.slopeTeslaPerMetre()).isCloseTo(number(row, "dB/dgap_6_mT/mm"), within(0.0051));
        }
    }

    private static double number(Map<String, String> row, String name) {
        return ReferenceData.number(row, name);
    }
}
