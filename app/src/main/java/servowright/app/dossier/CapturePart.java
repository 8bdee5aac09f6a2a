package servowright.app.dossier;

import java.util.List;
import servowright.app.view.BusView;
import servowright.app.view.CaptureView;
import servowright.app.view.FigureText;
import servowright.app.view.Markup;
import servowright.app.view.Plot;
import servowright.app.view.PlotSvg;
import servowright.app.view.TimelineSvg;

/** Each capture of the bus: what was read, the plan against it, what is odd, and its plots. */
final class CapturePart {
    private CapturePart() {}

    static void write(List<CaptureView> captures, Markup page) {
        if (captures.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "captures").leaf("h2", "Captures of the bus");
        for (CaptureView capture : captures) {
            page.line().leaf("h3", capture.file());
            page.leaf("p", capture.reading(), "class", "from");
            capture.notes().forEach(n -> page.leaf("p", n));
            plan(capture, page);
            for (BusView bus : capture.buses()) {
                bus(bus, page);
            }
            capture.bounds().ifPresent(b -> plots(List.of(b), page));
        }
        page.close();
    }

    private static void plan(CaptureView capture, Markup page) {
        if (capture.plan().isEmpty()) {
            return;
        }
        page.open("table", "class", "stack");
        Text.head(page, "Message", "Identifier", "", "Planned", "Came every", "Missing", "Varied", "May vary");
        page.open("tbody");
        for (CaptureView.MessageView m : capture.plan()) {
            page.open("tr").leaf("th", m.name(), "scope", "row");
            page.leaf("td", m.id()).leaf("td", m.state()).leaf("td", m.period().text());
            page.leaf("td", m.seen().map(FigureText::text).orElse(""));
            page.leaf("td", m.missing() == 0 ? "" : String.valueOf(m.missing()));
            page.leaf("td", m.varied().text());
            page.leaf("td", m.allowed().map(FigureText::text).orElse("no bound"));
            page.close();
        }
        page.close().close();
    }

    private static void bus(BusView bus, Markup page) {
        String span = bus.span().map(s -> " in " + s.text()).orElse("");
        page.leaf("p", bus.name() + ": " + bus.frames() + " frames" + span);
        bus.load().ifPresent(l -> page.leaf("p", "mean load " + l.text() + highest(bus)));
        if (!bus.remarks().isEmpty()) {
            page.open("ul");
            bus.remarks().forEach(r -> {
                page.open("li");
                Text.inline(r, page);
                page.close();
            });
            page.close();
        }
        bus.fullest()
                .ifPresent(t -> page.open("figure")
                        .add(TimelineSvg.of(t))
                        .leaf("figcaption", t.description())
                        .close());
        plots(bus.plots(), page);
    }

    private static String highest(BusView bus) {
        StringBuilder words = new StringBuilder();
        bus.worst()
                .forEach((window, load) -> words.append(", at most ")
                        .append(load.text())
                        .append(" in ")
                        .append(window.text()));
        return words.toString();
    }

    private static void plots(List<Plot> plots, Markup page) {
        if (plots.isEmpty()) {
            return;
        }
        page.open("div", "class", "plots");
        for (Plot plot : plots) {
            page.open("figure")
                    .add(PlotSvg.of(plot))
                    .leaf("figcaption", plot.description())
                    .close();
        }
        page.close();
    }
}
