package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.acceptance.MessageSeen;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.bench.Curve;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.quantity.Quantity;

/**
 * A capture as it is shown.
 *
 * @param file    as it was named
 * @param reading what was read, in words
 * @param summary its counts
 * @param buses   one for each interface in it
 * @param plan    each message of the plan, highest priority first; empty without a plan
 * @param bounds  how much each arrival varied, and how much it may; absent without a plan
 */
public record CaptureView(
        String file,
        String reading,
        CaptureSummary summary,
        List<BusView> buses,
        List<MessageView> plan,
        Optional<Plot> bounds) {
    /**
     * A message of the plan and what came of it.
     *
     * @param period  of the plan
     * @param seen    period in the capture; absent when too little came
     * @param varied  by how much its arrival varied at least
     * @param allowed by how much it may vary; absent when the plan does not bound it
     */
    public record MessageView(
            String name,
            String from,
            String id,
            String state,
            FigureText period,
            Optional<FigureText> seen,
            long missing,
            FigureText varied,
            Optional<FigureText> allowed) {
        static MessageView of(MessageSeen message) {
            return new MessageView(
                    message.name(),
                    message.from(),
                    message.label(),
                    message.seen().isEmpty() ? "absent" : message.stopped() ? "stops" : "comes",
                    time(message.plannedNs()),
                    message.periodNs() == 0 ? Optional.empty() : Optional.of(time(Math.round(message.periodNs()))),
                    message.missing(),
                    time(message.variedNs()),
                    message.allowedNs() == Long.MAX_VALUE ? Optional.empty() : Optional.of(time(message.allowedNs())));
        }
    }

    public CaptureView {
        buses = List.copyOf(buses);
        plan = List.copyOf(plan);
    }

    /** How a capture is shown that was held against a plan. */
    static CaptureView of(PlanSeen seen) {
        CaptureSummary summary = seen.capture().summary();
        return new CaptureView(
                seen.capture().test().recording(),
                reading(summary),
                summary,
                List.of(BusView.of(seen.capture().name(), seen.capture().traffic())),
                seen.messages().stream().map(MessageView::of).toList(),
                bounds(seen));
    }

    private static Optional<Plot> bounds(PlanSeen seen) {
        List<MessageSeen> some = seen.messages().stream()
                .filter(m -> m.seen().isPresent() && m.allowedNs() != Long.MAX_VALUE)
                .toList();
        if (some.size() < 2 || !seen.timed()) {
            return Optional.empty();
        }
        double[] x = IntStream.rangeClosed(1, some.size()).asDoubleStream().toArray();
        double[] varied = some.stream().mapToDouble(m -> m.variedNs() * 1e-6).toArray();
        double[] allowed = some.stream().mapToDouble(m -> m.allowedNs() * 1e-6).toArray();
        return Optional.of(new Plot(
                "arrival against its bound",
                "message, by priority",
                "variation of arrival in ms",
                List.of(
                        new Plot.Series("allowed by the response time", x, allowed, Curve.Role.FITTED),
                        new Plot.Series("seen at least", x, varied, Curve.Role.MEASURED)),
                List.of()));
    }

    private static FigureText time(long ns) {
        return FigureText.of(Quantity.of(ns * 1e-9, "s"), "ms");
    }

    /** How a capture is shown. */
    public static CaptureView of(String file, CaptureSummary summary, List<BusTraffic> traffic) {
        List<BusView> buses = new ArrayList<>();
        for (BusTraffic bus : traffic) {
            buses.add(BusView.of(summary.name(bus), bus));
        }
        return new CaptureView(file, reading(summary), summary, buses, List.of(), Optional.empty());
    }

    private static String reading(CaptureSummary summary) {
        String lost = summary.lost() > 0 ? ", " + summary.lost() + " lost while recording" : "";
        return summary.form() + ", " + summary.frames() + " records" + lost;
    }

    /** Every plot, in the order in which they are shown. */
    public List<Plot> plots() {
        List<Plot> all = new ArrayList<>();
        bounds.ifPresent(all::add);
        buses.forEach(b -> all.addAll(b.plots()));
        return all;
    }

    /** What was noticed while reading. */
    public List<String> notes() {
        return summary.notes();
    }

    /** Captures and interfaces as one JSON document; docs/json.md says what each key means. */
    public static String json(List<CaptureView> captures, List<LinkView> links, String version) {
        Map<String, Object> json = FigureJson.document("captures", version);
        json.put("captures", captures.stream().map(CaptureJson::of).toList());
        json.put("links", links.stream().map(LinkView::json).toList());
        return JsonText.of(json);
    }
}
