package servowright.app.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import servowright.engine.capture.Timeline;
import servowright.engine.capture.Timeline.Held;

class TimelineSvgTest {
    private static final long MS = 1_000_000;

    @Test
    void draws_a_row_for_each_identifier_with_the_most_urgent_on_top() {
        TimelineView view = TimelineView.of(new Timeline(
                        5 * MS,
                        10 * MS,
                        List.of(
                                new Held(-100_000, 50_000, "0x705", 0x705L << 19),
                                new Held(5 * MS, 6 * MS, "0x181", 0x181L << 19),
                                new Held(9 * MS, 10 * MS, "0x705", 0x705L << 19))))
                .orElseThrow();
        assertThat(view.rows()).extracting(TimelineView.Row::label).containsExactly("0x181", "0x705");
        assertThat(view.description()).contains("fullest 10 ms: 3 frames of 2 identifiers");
        String svg = TimelineSvg.of(view).end();
        assertThat(svg).contains(">0x181<", ">0x705<", ">10<", "ms");
        // the frame from 5 to 6 ms of 10: half way between 84 and 850, a tenth of that wide
        assertThat(svg).contains("M467 8h76.6v10h-76.6z");
        // one that reaches in from before begins at the edge
        assertThat(svg).contains("M84 22h3.8v10");
    }

    @Test
    void draws_nothing_of_nothing_and_says_what_found_no_room() {
        assertThat(TimelineView.of(Timeline.NONE)).isEmpty();
        List<Held> many = new ArrayList<>();
        for (int k = 0; k < 30; k++) {
            many.add(new Held(k * 100_000L, k * 100_000L + 90_000, "0x" + (100 + k), k));
        }
        TimelineView view = TimelineView.of(new Timeline(0, 10 * MS, many)).orElseThrow();
        assertThat(view.rows()).hasSize(24);
        assertThat(view.description()).contains("6 more identifiers are not drawn");
    }
}
