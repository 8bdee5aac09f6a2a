package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class ThinningTest {
    @Test
    void keeps_the_least_and_the_most_of_every_column() {
        List<Thinning.Point> points = new ArrayList<>();
        for (int i = 0; i < 100_000; i++) {
            points.add(new Thinning.Point(i / 1000.0, i == 12_345 ? 50 : i == 70_001 ? -50 : Math.sin(i)));
        }
        List<Thinning.Point> kept = Thinning.of(points);
        assertThat(kept).hasSizeLessThanOrEqualTo(400).contains(points.get(12_345), points.get(70_001));
        assertThat(kept).isSortedAccordingTo(java.util.Comparator.comparingDouble(Thinning.Point::x));
    }

    @Test
    void keeps_few_points_as_they_are_and_leaves_out_what_is_no_number() {
        List<Thinning.Point> few = List.of(new Thinning.Point(0, 1), new Thinning.Point(5, 2));
        assertThat(Thinning.of(few)).isEqualTo(few);
        assertThat(Thinning.of(List.of(new Thinning.Point(0, Double.NaN), few.get(1))))
                .containsExactly(few.get(1));
        assertThat(Thinning.of(List.of())).isEmpty();
    }
}
