package servowright.app.view;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.capture.Timeline;
import servowright.engine.quantity.Quantity;

/**
 * The frames of a window as they are drawn: a row for each identifier, highest priority first.
 *
 * @param ms   length of the window, ms
 * @param rows what each identifier held
 * @param more identifiers that found no row
 */
public record TimelineView(double ms, List<Row> rows, int more) {
    private static final int MOST_ROWS = 24;

    /**
     * One identifier.
     *
     * @param spans from and to of each frame, ms after the window's begin
     */
    public record Row(String label, List<Span> spans) {
        public Row {
            spans = List.copyOf(spans);
        }
    }

    /** A frame, in ms. */
    public record Span(double from, double to) {}

    public TimelineView {
        rows = List.copyOf(rows);
    }

    static Optional<TimelineView> of(Timeline timeline) {
        Map<String, List<Span>> rows = new LinkedHashMap<>();
        timeline.held().stream()
                .sorted(Comparator.comparingLong(Timeline.Held::rank))
                .forEach(h -> rows.computeIfAbsent(h.label(), k -> new ArrayList<>())
                        .add(new Span(Math.max(0, h.fromNs()) * 1e-6, h.toNs() * 1e-6)));
        List<Row> all = rows.entrySet().stream()
                .limit(MOST_ROWS)
                .map(e -> new Row(e.getKey(), e.getValue()))
                .toList();
        return all.isEmpty()
                ? Optional.empty()
                : Optional.of(new TimelineView(timeline.lengthNs() * 1e-6, all, rows.size() - all.size()));
    }

    /** What it shows, for those who cannot see it. */
    public String description() {
        int frames = rows.stream().mapToInt(r -> r.spans().size()).sum();
        String left = more == 0 ? "" : "; " + more + " more identifiers are not drawn";
        return "The fullest " + FigureText.of(Quantity.of(ms * 1e-3, "s"), "ms").text() + ": " + frames + " frames of "
                + rows.size() + " identifiers, highest priority on top" + left + ".";
    }
}
