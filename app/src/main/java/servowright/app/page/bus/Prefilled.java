package servowright.app.page.bus;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.app.view.PartView;
import servowright.app.view.View;

/** Worksheets that help to set the bus up, filled with what the machine says of it. */
final class Prefilled {
    static final String TIMING = "timing-search";
    static final String TERMINATORS = "bus-terminators";
    static final List<String> NAMES = List.of(TIMING, TERMINATORS);

    private Prefilled() {}

    /** What goes into each worksheet. */
    static Map<String, Map<String, List<String>>> of(View view) {
        Map<String, List<String>> timing = new LinkedHashMap<>();
        clock(view).ifPresent(c -> timing.put("clock", List.of(c)));
        declared(view, "rate").ifPresent(r -> timing.put("rate", List.of(r)));
        Map<String, List<String>> terminators = new LinkedHashMap<>();
        declared(view, "terminators").ifPresent(n -> terminators.put("terminators", List.of(n)));
        terminators.put("nodes", List.of(String.valueOf(view.axes().size() + 1)));
        Map<String, Map<String, List<String>>> all = new LinkedHashMap<>();
        all.put(TIMING, timing);
        all.put(TERMINATORS, terminators);
        return all;
    }

    private static Optional<String> clock(View view) {
        return view.busPlans().stream()
                .flatMap(p -> p.clocks().stream())
                .map(c -> c.clock())
                .findFirst();
    }

    private static Optional<String> declared(View view, String key) {
        return view.parts().stream()
                .filter(p -> p.kind() == PartView.Kind.BUS)
                .flatMap(p -> p.rows().stream())
                .filter(r -> r.path().endsWith("bus / " + key))
                .map(PartView.Row::text)
                .findFirst();
    }
}
