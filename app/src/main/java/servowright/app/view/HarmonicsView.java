package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.quantity.Quantity;

/** How large an angle error is at each order of the turn: as a mount gives it, as a bench test found it, or both. */
public record HarmonicsView(List<Bar> bars) {
    private static final List<String> NAMED = List.of("first_harmonic", "second_harmonic", "third_harmonic");
    private static final int MOST_ORDERS = 8;

    /**
     * One order.
     *
     * @param expected amplitude that the mount gives
     * @param measured amplitude that a bench test found
     */
    public record Bar(int order, Optional<FigureText> expected, Optional<FigureText> measured) {
        /** {@code once per turn}. */
        public String words() {
            return switch (order) {
                case 1 -> "once per turn";
                case 2 -> "twice per turn";
                default -> order + " times per turn";
            };
        }

        /** The figures in words. */
        public String text() {
            List<String> all = new ArrayList<>();
            expected.ifPresent(e -> all.add("mount " + e.text()));
            measured.ifPresent(m -> all.add("measured " + m.text()));
            return String.join(", ", all);
        }
    }

    public HarmonicsView {
        bars = List.copyOf(bars);
    }

    /**
     * Orders that one of both knows.
     *
     * @param sheet worked from the mount
     * @param found on the bench
     */
    public static HarmonicsView of(Optional<SheetView> sheet, Optional<CorrectionView> found) {
        List<Bar> bars = new ArrayList<>();
        for (int order = 1; order <= MOST_ORDERS; order++) {
            int k = order;
            Optional<FigureText> expected =
                    sheet.filter(s -> k <= NAMED.size()).flatMap(s -> named(s, NAMED.get(k - 1)));
            Optional<FigureText> measured = found.flatMap(c -> c.correction().error().ripples().stream()
                            .filter(r -> r.order() == k)
                            .findFirst())
                    .map(r -> FigureText.of(Quantity.of(r.amplitudeRad(), "rad"), "deg"));
            if (expected.isPresent() || measured.isPresent()) {
                bars.add(new Bar(order, expected, measured));
            }
        }
        return new HarmonicsView(bars);
    }

    private static Optional<FigureText> named(SheetView sheet, String result) {
        return sheet.results().stream()
                .filter(r -> r.name().equals(result))
                .findFirst()
                .flatMap(SheetView.ResultView::figure);
    }

    /** What the picture shows, for those who cannot see it. */
    String description() {
        return String.join(
                        "; ",
                        bars.stream().map(b -> b.words() + ": " + b.text()).toList()) + ".";
    }

    /** The largest amplitude, radians. */
    double most() {
        double most = 0;
        for (Bar bar : bars) {
            most = Math.max(most, bar.expected().map(f -> f.known().si()).orElse(0.0));
            most = Math.max(most, bar.measured().map(f -> f.known().si()).orElse(0.0));
        }
        return most;
    }
}
