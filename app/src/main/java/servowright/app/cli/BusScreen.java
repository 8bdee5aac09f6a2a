package servowright.app.cli;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import servowright.app.view.BusView;
import servowright.app.view.BusView.IdView;
import servowright.app.view.CaptureView;
import servowright.app.view.FigureText;
import servowright.app.view.Sentence;

/** A capture on the terminal: what was read, each bus with its load and identifiers, and what is odd. */
final class BusScreen {
    private static final int LABEL = 16;
    private static final String ROW = "%-11s %8s %-8s %-12s %-12s %-12s %7s %6s";

    private BusScreen() {}

    static void show(CaptureView capture, Screen screen) {
        screen.heading(Wrap.safe(capture.file()));
        screen.wrapped(2, Sentence.of(capture.reading()));
        capture.notes().forEach(n -> screen.wrapped(2, Sentence.of(Wrap.safe(n))));
        for (BusView bus : capture.buses()) {
            screen.line();
            screen.heading(Wrap.safe(bus.name()));
            facts(bus, screen);
            bus.remarks().forEach(r -> screen.labelled(2, "look at", LABEL, r));
            screen.line();
            identifiers(bus, screen);
        }
        screen.line();
    }

    private static void facts(BusView bus, Screen screen) {
        String fd = bus.fdFrames() > 0 ? ", " + bus.fdFrames() + " of them FD" : "";
        String span = bus.span().map(s -> " in " + s.text()).orElse(", without time stamps");
        row(screen, "frames", bus.frames() + fd + span);
        bus.load().ifPresent(l -> row(screen, "load", "mean " + l.text() + worst(bus)));
        bus.carried()
                .ifPresent(c -> row(screen, "carries", c.text() + " in the mean; a load needs the bit rate: --rate"));
        if (!bus.nodes().isEmpty()) {
            row(screen, "nodes", String.join(", ", bus.nodes()));
        }
    }

    private static String worst(BusView bus) {
        List<String> windows = bus.worst().entrySet().stream()
                .map((Map.Entry<FigureText, FigureText> e) ->
                        e.getValue().text() + " in " + e.getKey().text())
                .toList();
        return "; at most " + String.join(", ", windows);
    }

    private static void row(Screen screen, String label, String words) {
        screen.labelled(2, label, LABEL, Sentence.of(words));
    }

    private static void identifiers(BusView bus, Screen screen) {
        screen.line("  "
                + String.format(
                                Locale.ROOT,
                                ROW,
                                "identifier",
                                "frames",
                                "bytes",
                                "period",
                                "shortest",
                                "longest",
                                "missing",
                                "share")
                        .stripTrailing());
        for (IdView id : bus.identifiers()) {
            List<FigureText> period = id.period();
            screen.line("  "
                    + String.format(
                                    Locale.ROOT,
                                    ROW,
                                    id.id(),
                                    id.frames() + id.remotes(),
                                    id.bytes(),
                                    period.isEmpty() ? "" : period.get(0).text(),
                                    period.isEmpty() ? "" : period.get(1).text(),
                                    period.isEmpty() ? "" : period.get(2).text(),
                                    id.missing() == 0 ? "" : id.missing(),
                                    id.share().text())
                            .stripTrailing()
                    + (id.what().isEmpty() ? "" : "  " + id.what()));
        }
    }
}
