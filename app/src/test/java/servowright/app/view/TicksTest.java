package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TicksTest {
    private static List<String> labels(Ticks ticks) {
        return ticks.labels().stream().map(Ticks.Tick::label).toList();
    }

    @Test
    void steps_by_one_two_or_five() {
        assertThat(labels(Ticks.over(0, 10, 5))).containsExactly("0", "2", "4", "6", "8", "10");
        assertThat(labels(Ticks.over(0, 0.8, 4))).containsExactly("0", "0.2", "0.4", "0.6", "0.8");
        assertThat(labels(Ticks.over(-120, 130, 5))).containsExactly("-100", "-50", "0", "50", "100");
    }

    @Test
    void moves_both_ends_out_to_a_tick_when_asked() {
        Ticks ticks = Ticks.rounded(-5.7, 5.7, 5);
        assertThat(ticks.from()).isEqualTo(-10);
        assertThat(ticks.to()).isEqualTo(10);
    }

    @Test
    void makes_room_around_a_single_value_and_around_none() {
        assertThat(Ticks.over(3, 3, 5).labels()).hasSizeGreaterThan(1);
        assertThat(Ticks.over(0, 0, 5).labels()).hasSizeGreaterThan(1);
        assertThat(Ticks.over(Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY, 5)
                        .labels())
                .isNotEmpty();
    }

    @Test
    void writes_very_large_and_small_labels_short() {
        assertThat(labels(Ticks.over(0, 4e8, 4))).contains("1.0e8");
        assertThat(labels(Ticks.over(0, 4e-8, 4))).contains("1.0e-8");
    }
}
