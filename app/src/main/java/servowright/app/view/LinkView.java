package servowright.app.view;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.acceptance.LinkCheck;
import servowright.engine.bus.BitTiming;
import servowright.engine.capture.LinkRemarks;
import servowright.engine.capture.LinkReport;
import servowright.engine.machine.Machine;
import servowright.engine.quantity.Quantity;

/**
 * A CAN interface as it is shown.
 *
 * @param file    that tells of it
 * @param name    of the interface
 * @param rows    what is told, by label
 * @param remarks what is odd about it
 * @param checks  against the plan, worst first; empty without one
 * @param report  as it was read
 */
public record LinkView(
        String file,
        String name,
        Map<String, String> rows,
        List<Sentence> remarks,
        List<Check> checks,
        LinkReport report) {
    /** A check against the plan. */
    public record Check(String verdict, Sentence words) {}

    public LinkView {
        rows = new LinkedHashMap<>(rows);
        remarks = List.copyOf(remarks);
        checks = List.copyOf(checks);
    }

    /** How an interface is shown, beside the plan of a machine if there is one. */
    public static LinkView of(String file, LinkReport link, Optional<Machine> machine) {
        Map<String, String> rows = new LinkedHashMap<>();
        rows.put("state", link.state() + (link.modes().isEmpty() ? "" : ", " + link.modes()) + counters(link));
        link.nominal().ifPresent(p -> phase("", p, rows));
        link.data().ifPresent(p -> phase("data ", p, rows));
        link.restartMs()
                .filter(ms -> ms > 0)
                .ifPresent(ms ->
                        rows.put("comes back", "after " + time(ms * 1e-3, "ms").text()));
        List<String> counted = new ArrayList<>();
        link.counted().forEach((what, n) -> {
            if (n > 0 && !what.endsWith("bytes")) {
                counted.add(what + " " + n);
            }
        });
        if (!link.counted().isEmpty()) {
            rows.put("counted", counted.isEmpty() ? "nothing" : String.join(", ", counted));
        }
        List<Check> checks = machine.map(m -> LinkCheck.of(link, m.bus())).orElse(List.of()).stream()
                .map(c -> new Check(c.verdict().words(), Sentence.of(c.words())))
                .toList();
        return new LinkView(
                file,
                link.name(),
                rows,
                LinkRemarks.of(link).stream().map(Sentence::of).toList(),
                checks,
                link);
    }

    private static String counters(LinkReport link) {
        return link.counters().isEmpty()
                ? ""
                : "; error counters " + link.counters().get("tx") + " sending, "
                        + link.counters().get("rx") + " receiving";
    }

    private static void phase(String which, LinkReport.Phase phase, Map<String, String> rows) {
        String rate = rate(phase.rate()).text();
        String sample = phase.timing().isPresent() || phase.samplePoint() > 0
                ? ", sampled at "
                        + FigureText.of(
                                        Quantity.number(phase.timing()
                                                .map(BitTiming::samplePoint)
                                                .orElse(phase.samplePoint())),
                                        "%")
                                .text()
                : "";
        rows.put(which + "rate", rate + sample);
        phase.timing()
                .ifPresent(t -> rows.put(
                        which + "bit",
                        t.quanta() + " quanta of "
                                + time(t.quantumNs() * 1e-9, "ns").text() + ": 1 + " + t.prop() + " + " + t.ps1()
                                + " + " + t.ps2() + ", jump " + t.sjw()));
    }

    private static FigureText rate(double bitsPerSecond) {
        return FigureText.of(Quantity.of(bitsPerSecond, "bit/s"), "kbit/s");
    }

    private static FigureText time(double seconds, String unit) {
        return FigureText.of(Quantity.of(seconds, "s"), unit);
    }

    /** For one JSON document with captures; docs/json.md says what each key means. */
    Object json() {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("file", file);
        json.put("interface", name);
        json.put("state", report.state());
        json.put("modes", report.modes());
        json.put("error_counters", report.counters());
        report.restartMs().ifPresent(ms -> json.put("restart_ms", ms));
        report.nominal().ifPresent(p -> json.put("nominal", json(p)));
        report.data().ifPresent(p -> json.put("data", json(p)));
        json.put("counted", report.counted());
        json.put("remarks", FigureJson.sentences(remarks));
        List<Object> checked = new ArrayList<>();
        for (Check check : checks) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("verdict", check.verdict());
            one.put("words", check.words().text());
            checked.add(one);
        }
        json.put("checks", checked);
        return json;
    }

    private static Object json(LinkReport.Phase phase) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("rate", FigureJson.figure(rate(phase.rate())));
        json.put("stated_rate", FigureJson.figure(rate(phase.bitsPerSecond())));
        json.put("sample_point", phase.timing().map(BitTiming::samplePoint).orElse(phase.samplePoint()));
        return json;
    }
}
