package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import servowright.engine.known.Place;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;

class DrillSvgTest {
    private static final Place NOWHERE = new Place("machine.yaml", 1, "");

    /** An axis from pairs of key and text. */
    private static Axis axis(Object... figures) {
        Figures<AxisFigure> all = Figures.none();
        for (int i = 0; i < figures.length; i += 2) {
            Declared declared = Declared.of((Stated) QuantityText.parse((String) figures[i + 1]), NOWHERE);
            all = all.with((AxisFigure) figures[i], declared);
        }
        return new Axis("arm", NOWHERE, Optional.empty(), Optional.empty(), Optional.empty(), all, Map.of());
    }

    @Test
    void holes_on_a_circle_lie_where_they_are_stated() {
        DrillView drill = DrillView.of(axis(
                        AxisFigure.HOLE_DIAMETER, "2.2 mm",
                        AxisFigure.HOLE_COUNT, "4",
                        AxisFigure.HOLE_CIRCLE, "16 mm",
                        AxisFigure.HOLE_FROM, "45 deg"))
                .orElseThrow();
        assertThat(drill.holes()).hasSize(4);
        double each = 8 / Math.sqrt(2);
        assertThat(drill.holes().get(0).x()).isCloseTo(each, within(1e-9));
        assertThat(drill.holes().get(2).y()).isCloseTo(-each, within(1e-9));
        assertThat(drill.bore()).isEmpty();
    }

    @Test
    void holes_on_a_rectangle_lie_at_its_corners() {
        DrillView drill = DrillView.of(axis(
                        AxisFigure.HOLE_DIAMETER, "3.4 mm",
                        AxisFigure.HOLE_WIDTH, "20 mm",
                        AxisFigure.HOLE_HEIGHT, "14 mm",
                        AxisFigure.BORE, "9 mm"))
                .orElseThrow();
        assertThat(drill.holes()).contains(new DrillView.Hole(10, 7), new DrillView.Hole(-10, -7));
        assertThat(drill.bore().orElseThrow()).isCloseTo(9, within(1e-9));
    }

    @Test
    void without_a_size_or_a_pattern_there_is_no_template() {
        assertThat(DrillView.of(axis(AxisFigure.HOLE_COUNT, "4", AxisFigure.HOLE_CIRCLE, "16 mm")))
                .isEmpty();
        assertThat(DrillView.of(axis(AxisFigure.HOLE_DIAMETER, "2.2 mm", AxisFigure.HOLE_CIRCLE, "16 mm")))
                .isEmpty();
    }

    @Test
    void one_unit_of_the_drawing_is_one_millimetre_of_paper() {
        DrillView drill = new DrillView(
                "arm",
                List.of(new DrillView.Hole(10, 0), new DrillView.Hole(-10, 0)),
                3.4,
                Optional.of(9.0),
                Optional.of(8.0));
        String svg = DrillSvg.of(drill).end();
        // Reach 11.7 mm and 8 mm edge on each side, but never narrower than the bar and its edges.
        assertThat(svg)
                .contains("width=\"66mm\"")
                .contains("height=\"63.4mm\"")
                .contains("viewBox=\"0 0 66 63.4\"")
                .contains("width:66mm;height:63.4mm;max-width:none")
                .contains("cx=\"43\" cy=\"19.7\" r=\"1.7\"")
                .contains("x1=\"8\" y1=\"43.4\" x2=\"58\" y2=\"43.4\"")
                .contains("measure it with a caliper", "print at 100 %");
    }

    @Test
    void a_pattern_that_no_page_takes_is_said_to_be_too_large() {
        // 16 mm of edges beside the pattern: 160 mm of holes and 3.9 mm of a hole are 179.9 mm wide, 164 mm are 183.9
        // mm.
        assertThat(DrillSvg.tooLarge(across(160))).isEmpty();
        assertThat(DrillSvg.of(across(160)).end()).doesNotContain("larger than A4");
        assertThat(DrillSvg.tooLarge(across(164)).orElseThrow()).contains("184 mm wide", "180 mm");
        assertThat(DrillSvg.of(across(164)).end()).contains("larger than A4");
    }

    private static DrillView across(double width) {
        List<DrillView.Hole> holes = List.of(new DrillView.Hole(width / 2, 0), new DrillView.Hole(-width / 2, 0));
        return new DrillView("arm", holes, 3.9, Optional.empty(), Optional.empty());
    }
}
