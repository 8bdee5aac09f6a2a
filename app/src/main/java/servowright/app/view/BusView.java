package servowright.app.view;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bench.Curve;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.IdTraffic;
import servowright.engine.capture.Load;
import servowright.engine.capture.LoadCurve;
import servowright.engine.capture.Node;
import servowright.engine.capture.Period;
import servowright.engine.capture.Remark;
import servowright.engine.capture.Remarks;
import servowright.engine.capture.Service;
import servowright.engine.quantity.Quantity;

/**
 * One bus of a capture as it is shown.
 *
 * @param name        of its interface
 * @param span        from the first to the last frame, without steps of the clock; absent without stamps
 * @param load        mean load; absent without a rate or stamps
 * @param carried     what it carries in the mean; absent without stamps
 * @param worst       highest load by length of window
 * @param identifiers highest priority first
 * @param nodes       nodes that keep to CiA 301, in words
 * @param remarks     what is odd about it
 * @param plots       load over time, and times between the frames of the busiest identifiers
 * @param fullest     the frames of the fullest window; absent without a rate or stamps
 */
public record BusView(
        String name,
        long frames,
        long fdFrames,
        Optional<FigureText> span,
        Optional<FigureText> load,
        Optional<FigureText> carried,
        Map<FigureText, FigureText> worst,
        List<IdView> identifiers,
        List<String> nodes,
        List<Sentence> remarks,
        List<Plot> plots,
        Optional<TimelineView> fullest) {
    private static final int PLOTTED = 3;
    private static final int OPERATIONAL = 5;
    private static final int PRE_OPERATIONAL = 127;
    private static final int STOPPED = 4;

    /**
     * One identifier.
     *
     * @param what   what it is for in the predefined connection set; empty where the bus does not show that it keeps to it
     * @param bytes  {@code 8}, or {@code 2 to 8}
     * @param period middle, shortest and longest time between two; empty without stamps
     * @param share  of the time or of the bits that all frames took
     */
    public record IdView(
            String id,
            String what,
            long frames,
            long remotes,
            String bytes,
            List<FigureText> period,
            long gaps,
            long missing,
            long bursts,
            FigureText share) {}

    public BusView {
        worst = new LinkedHashMap<>(worst);
        identifiers = List.copyOf(identifiers);
        nodes = List.copyOf(nodes);
        remarks = List.copyOf(remarks);
        plots = List.copyOf(plots);
    }

    /** How a bus is shown. */
    public static BusView of(String name, BusTraffic bus) {
        double seconds = bus.stamps().elapsedNs() * 1e-9;
        boolean spans = bus.timed() > 0 && seconds > 0;
        boolean loads = !bus.loads().isEmpty();
        Map<FigureText, FigureText> worst = new LinkedHashMap<>();
        for (Load load : bus.loads()) {
            worst.put(time(load.windowNs()), share(load.worst()));
        }
        return new BusView(
                name,
                bus.frames(),
                bus.fdFrames(),
                spans ? Optional.of(FigureText.of(Quantity.of(seconds, "s"), "s")) : Optional.empty(),
                spans && loads ? Optional.of(share(bus.meanLoad())) : Optional.empty(),
                spans && !loads
                        ? Optional.of(FigureText.of(Quantity.of(bus.heldNs() / seconds, "bit/s"), ""))
                        : Optional.empty(),
                worst,
                bus.identifiers().stream().map(id -> identifier(bus, id)).toList(),
                bus.nodes().stream().map(n -> node(n)).toList(),
                Remarks.of(bus).stream().map(Remark::words).map(Sentence::of).toList(),
                plots(name, bus),
                TimelineView.of(bus.fullest()));
    }

    private static IdView identifier(BusTraffic bus, IdTraffic id) {
        Period period = id.period();
        return new IdView(
                id.label(),
                bus.service(id).map(Service::words).orElse(""),
                id.frames(),
                id.remotes(),
                id.leastBytes() == id.mostBytes()
                        ? String.valueOf(id.mostBytes())
                        : id.leastBytes() + " to " + id.mostBytes(),
                period.count() == 0
                        ? List.of()
                        : List.of(time(period.medianNs()), time(period.leastNs()), time(period.mostNs())),
                period.gaps(),
                period.missing(),
                period.bursts(),
                share(bus.heldNs() == 0 ? 0 : (double) id.heldNs() / bus.heldNs()));
    }

    private static String node(Node node) {
        String words = switch (node.lastState()) {
            case OPERATIONAL -> "operational";
            case PRE_OPERATIONAL -> "pre-operational";
            case STOPPED -> "stopped";
            case 0 -> "booted, no heartbeat since";
            case -1 -> "no heartbeat";
            default -> "state " + node.lastState();
        };
        String axis = node.turns().isEmpty()
                ? ""
                : ", axis " + node.turns().get(node.turns().size() - 1).state().words();
        return node.number() + " " + words + axis;
    }

    private static List<Plot> plots(String name, BusTraffic bus) {
        List<Plot> plots = new ArrayList<>();
        LoadCurve curve = bus.curve();
        if (!bus.loads().isEmpty() && curve.shares().length > 1) {
            double[] x = new double[curve.shares().length];
            for (int i = 0; i < x.length; i++) {
                x[i] = (i + 0.5) * curve.stepNs() * 1e-9;
            }
            double[] y = Arrays.stream(curve.shares()).map(s -> 100 * s).toArray();
            String label = "load in steps of " + time(curve.stepNs()).text();
            plots.add(new Plot(
                    name + ", load",
                    AxisLabel.of("s"),
                    "load in %",
                    List.of(new Plot.Series(label, x, y, Curve.Role.MEASURED)),
                    List.of()));
        }
        bus.identifiers().stream()
                .filter(id -> id.histogram().counts().length > 1)
                .sorted((a, b) -> Long.compare(b.frames(), a.frames()))
                .limit(PLOTTED)
                .map(id -> histogram(name, id))
                .forEach(plots::add);
        return plots;
    }

    private static Plot histogram(String name, IdTraffic id) {
        double[] x =
                Arrays.stream(id.histogram().middleNs()).map(ns -> ns * 1e-6).toArray();
        double[] y = Arrays.stream(id.histogram().counts()).asDoubleStream().toArray();
        return new Plot(
                name + ", " + id.label(),
                AxisLabel.of("ms"),
                "intervals",
                List.of(new Plot.Series("time from one " + id.label() + " to the next", x, y, Curve.Role.MEASURED)),
                List.of());
    }

    private static FigureText time(long ns) {
        return FigureText.of(Quantity.of(ns * 1e-9, "s"), "ms");
    }

    private static FigureText share(double share) {
        return FigureText.of(Quantity.number(share), "%");
    }
}
