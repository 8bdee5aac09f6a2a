package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import servowright.engine.bench.Curve;

class PlotTest {
    private static final double[] TIME = {0, 1, 2};

    private static Curve curve(String name, Curve.Role role, double... y) {
        return new Curve(name, TIME, y, "s", "degC", role);
    }

    private static Plot plot() {
        return Plot.of(
                        "heating",
                        List.of(
                                curve("winding", Curve.Role.MEASURED, 293.15, 303.15, 313.15),
                                curve("left over", Curve.Role.RESIDUAL, 0.1, -0.2, 0.1)))
                .get(0);
    }

    /** 20 degC is 293.15 K; a difference of 0.1 K is one of 0.1 degC (SI brochure, 9th ed., 2.3.1, from memory). */
    @Test
    void counts_what_is_left_over_of_a_temperature_without_the_zero_of_its_scale() {
        assertThat(plot().series().get(0).y()).containsExactly(20, 30, 40);
        assertThat(plot().strip().get(0).y()).containsExactly(0.1, -0.2, 0.1);
        assertThat(plot().strip().get(0).name()).isEqualTo("left over in K");
    }

    @Test
    void names_a_single_line_of_the_strip_at_the_strip() {
        String svg = PlotSvg.of(plot()).end();
        int strip = svg.indexOf("left over in K", svg.indexOf("</desc>"));
        assertThat(strip).isGreaterThan(svg.lastIndexOf("<path"));
        assertThat(svg.indexOf("left over in K", strip + 1)).isEqualTo(-1);
    }
}
