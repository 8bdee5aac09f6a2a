package servowright.engine.encoder;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Misplaced assemblies computed independently with the field in space (recomputed). */
class AssemblyFieldTest {
    private static final Pattern TILT = Pattern.compile("(sensor|magnet) tilt (\\d)(?: about ([xy])| axis (45))?.*?");
    private static final Pattern OFFSET =
            Pattern.compile("(sensor|magnet) (?:offset|off)? ?(0\\.\\d)( at 45deg to M)?.*");

    @Test
    void full_model_is_within_1e_5_degrees_of_the_random_assemblies() {
        for (Map<String, String> row : ReferenceData.rows("magnet-assembly-cases.csv")) {
            AngleError error = assembly(row).turn(new Sensing.Point(), 360).error();
            assertThat(Math.toDegrees(error.meanRad())).isCloseTo(number(row, "mean_deg"), within(1e-5));
            // Peaks were taken at coarser angles there.
            assertThat(Math.toDegrees(error.peakRad())).isCloseTo(number(row, "peak_deg"), within(2e-3));
            for (int order = 1; order <= 3; order++) {
                Ripple ripple = error.ripple(order);
                assertThat(Math.toDegrees(ripple.cosineRad()))
                        .isCloseTo(number(row, "c" + order + "_deg"), within(1e-5));
                assertThat(Math.toDegrees(ripple.sineRad())).isCloseTo(number(row, "s" + order + "_deg"), within(1e-5));
            }
        }
    }

    @Test
    void second_order_formula_agrees_with_its_own_column_and_stays_within_its_residue() {
        for (Map<String, String> row : ReferenceData.rows("magnet-assembly-cases.csv")) {
            Assembly assembly = assembly(row);
            AngleError formula = assembly.secondOrder(360);
            AngleError full = assembly.turn(new Sensing.Point(), 360).error();
            for (int order = 1; order <= 2; order++) {
                Ripple ripple = formula.ripple(order);
                assertThat(Math.toDegrees(ripple.cosineRad()))
                        .isCloseTo(number(row, "formula_c" + order), within(1e-5));
                assertThat(Math.toDegrees(ripple.sineRad())).isCloseTo(number(row, "formula_s" + order), within(1e-5));
                Ripple exact = full.ripple(order);
                assertThat(Math.toDegrees(
                                Math.hypot(exact.cosineRad() - ripple.cosineRad(), exact.sineRad() - ripple.sineRad())))
                        .isLessThan(0.021);
            }
        }
    }

    @Test
    void agrees_with_the_table_of_single_and_paired_misplacements() {
        int compared = 0;
        for (Map<String, String> row : ReferenceData.rows("magnet-misalignment-6x2.5.csv")) {
            if (ReferenceData.text(row, "case").startsWith("all")) {
                continue; // its directions are not stated
            }
            Sensing sensing = ReferenceData.text(row, "sensing").equals("point")
                    ? new Sensing.Point()
                    : new Sensing.Gradient(1e-3);
            FullTurn turn = misplaced(ReferenceData.text(row, "case")).turn(sensing, 360);
            assertThat(Math.abs(Math.toDegrees(turn.error().meanRad())))
                    .as(row.toString())
                    .isCloseTo(Math.abs(number(row, "mean_deg")), within(2e-5));
            for (int order = 1; order <= 5; order++) {
                assertThat(Math.toDegrees(turn.error().ripple(order).amplitudeRad()))
                        .as(row + " H" + order)
                        .isCloseTo(number(row, "H" + order + "_deg"), within(2e-5));
            }
            assertThat(1e3 * turn.leastSignal())
                    .as(row.toString())
                    .isCloseTo(number(row, "min_signal_mT"), within(2e-3));
            assertThat(1e3 * turn.mostSignal())
                    .as(row.toString())
                    .isCloseTo(number(row, "max_signal_mT"), within(2e-3));
            compared++;
        }
        assertThat(compared).isGreaterThan(110);
    }

    private static Assembly assembly(Map<String, String> row) {
        RoundMagnet magnet = RoundMagnet.disc(1e-3 * number(row, "D_mm"), 1e-3 * number(row, "L_mm"));
        return Assembly.centred(magnet, number(row, "Br_T"), 1e-3 * number(row, "gap_mm"))
                .withElevation(number(row, "eta_rad"))
                .withOffsets(planar(row, "ws_", "", 1e-3), planar(row, "wm_", "", 1e-3))
                .withTilts(planar(row, "t_", "_rad", 1), planar(row, "s_", "_rad", 1));
    }

    private static Planar planar(Map<String, String> row, String before, String after, double scale) {
        return new Planar(number(row, before + "x" + after), number(row, before + "y" + after)).times(scale);
    }

    private static Assembly misplaced(String name) {
        Planar[] offsets = {Planar.ZERO, Planar.ZERO};
        Planar[] tilts = {Planar.ZERO, Planar.ZERO};
        for (String part : name.split(" and | \\+ ")) {
            Matcher tilt = TILT.matcher(part);
            Matcher offset = OFFSET.matcher(part);
            if (tilt.matches()) {
                double axis = "y".equals(tilt.group(3)) || tilt.group(3) == null ? Math.PI / 2 : 0;
                axis = tilt.group(4) == null ? axis : Math.PI / 4;
                tilts[index(tilt)] =
                        Planar.along(Math.toRadians(Double.parseDouble(tilt.group(2))), axis - Math.PI / 2);
            } else if (offset.matches()) {
                double direction = offset.group(3) == null ? 0 : Math.PI / 4;
                offsets[index(offset)] = Planar.along(1e-3 * Double.parseDouble(offset.group(2)), direction);
            } else {
                assertThat(List.of("aligned")).contains(part);
            }
        }
        return Assembly.centred(RoundMagnet.disc(6e-3, 2.5e-3), 1.2, 1e-3)
                .withOffsets(offsets[0], offsets[1])
                .withTilts(tilts[0], tilts[1]);
    }

    private static int index(Matcher part) {
        return part.group(1).equals("sensor") ? 0 : 1;
    }

    private static double number(Map<String, String> row, String name) {
        return ReferenceData.number(row, name);
    }
}
