package servowright.engine.capture;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import servowright.engine.capture.Remark.Kind;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/** Reads from the traffic of one bus what is odd about it. */
public final class Remarks {
    private static final int MOST_OF_A_KIND = 8;

    private final BusTraffic bus;
    private final List<Remark> remarks = new ArrayList<>();

    private Remarks(BusTraffic bus) {
        this.bus = bus;
    }

    /** What is odd, by kind. */
    public static List<Remark> of(BusTraffic bus) {
        Remarks all = new Remarks(bus);
        all.stamps();
        all.senders();
        all.errors();
        all.nodes();
        all.releases();
        return List.copyOf(all.remarks);
    }

    private void add(Kind kind, Phrase words) {
        if (remarks.stream().filter(r -> r.kind() == kind).count() < MOST_OF_A_KIND) {
            remarks.add(new Remark(kind, words));
        }
    }

    private void stamps() {
        Stamps stamps = bus.stamps();
        if (!stamps.jumps().isEmpty()) {
            Stamps.Jump first = stamps.jumps().get(0);
            add(
                    Kind.STAMPS,
                    Phrase.of("the clock steps {count} times, first by {step} before frame {frame}; intervals across a"
                                    + " step do not count")
                            .with("count", stamps.jumps().size())
                            .with("step", time(first.byNs()), "s")
                            .with("frame", (double) first.frame()));
        }
        if (stamps.tooClose() > 0) {
            Stamps.Crowd crowd = stamps.crowd();
            String meaning = stamps.ofTheHost(bus.frames())
                    ? "the stamps are those of the computer that fetched them, not of the bus"
                    : "these stamps are not those of the bus";
            add(
                    Kind.STAMPS,
                    Phrase.of(
                                    "{close} of {frames} frames stand closer than they take on the wire: {run} in {shown}, which"
                                            + " need {needed}; {meaning}")
                            .with("close", (double) stamps.tooClose())
                            .with("frames", (double) bus.frames())
                            .with("run", (double) crowd.frames())
                            .with("shown", time(crowd.shownNs()), "ms")
                            .with("needed", time(crowd.neededNs()), "ms")
                            .with("meaning", meaning));
        }
    }

    private void senders() {
        for (IdTraffic id : bus.identifiers()) {
            if (id.period().alternates()) {
                add(
                        Kind.SENDERS,
                        Phrase.of(
                                        "{id} comes in two series, each every {period}: two senders, or one that sends in pairs")
                                .with("id", id.label())
                                .with("period", time(2 * Math.round(id.period().meanNs())), "ms"));
            }
        }
        for (Node node : bus.nodes()) {
            if (node.seemsDouble()) {
                add(
                        Kind.SENDERS,
                        Phrase.of("node {node} tells two states in turn, {count} times: the number is used twice")
                                .with("node", node.number())
                                .with("count", node.alternations()));
            }
        }
    }

    private void errors() {
        Errors errors = bus.errors();
        if (errors.reports() == 0) {
            return;
        }
        String classes = new TreeMap<>(errors.counts())
                .entrySet().stream()
                        .filter(e -> e.getKey() != ErrorClass.COUNTERS)
                        .map(e -> e.getKey().words() + " " + e.getValue())
                        .collect(Collectors.joining(", "));
        add(
                Kind.ERRORS,
                Phrase.of("error reports: {classes}; {count} in all")
                        .with("count", (double) errors.reports())
                        .with("classes", classes));
        if (!errors.places().isEmpty()) {
            String places = errors.places().entrySet().stream()
                    .sorted(Map.Entry.<String, Long>comparingByValue(Comparator.reverseOrder())
                            .thenComparing(Map.Entry.comparingByKey()))
                    .map(e -> e.getKey() + " " + e.getValue())
                    .collect(Collectors.joining(", "));
            add(Kind.ERRORS, Phrase.of("they broke out in: {places}").with("places", places));
        }
        long left = errors.changes().stream()
                .filter(c -> c.state() == Errors.State.OFF)
                .count();
        if (left > 0) {
            add(
                    Kind.ERRORS,
                    Phrase.of("the recording controller left the bus {count} times; {own} frames after that are its own"
                                    + " echo")
                            .with("count", (double) left)
                            .with("own", (double) errors.ownAfterOff()));
        }
        counters(errors);
    }

    private void counters(Errors errors) {
        if (errors.mostTransmit() > 0 || errors.mostReceive() > 0) {
            add(
                    Kind.ERRORS,
                    Phrase.of("highest error counters: {transmit} sending, {receive} receiving")
                            .with("transmit", errors.mostTransmit())
                            .with("receive", errors.mostReceive()));
        }
    }

    private void nodes() {
        for (Node node : bus.nodes()) {
            if (node.restarts() > 0) {
                add(
                        Kind.RESTART,
                        Phrase.of("node {node} booted {count} times after it had been heard, without being told to: its"
                                        + " supply broke down, or it was reset")
                                .with("node", node.number())
                                .with("count", node.restarts()));
            }
            if (!node.emergencies().isEmpty()) {
                add(Kind.COMPLAINT, complaint(node, "emergencies", new TreeMap<>(node.emergencies()), 4));
            }
            faults(node);
            if (!node.aborts().isEmpty()) {
                add(Kind.COMPLAINT, complaint(node, "refused service requests", new TreeMap<>(node.aborts()), 8));
            }
        }
    }

    private void faults(Node node) {
        List<Node.Turn> faults =
                node.turns().stream().filter(t -> t.state() == AxisState.FAULT).toList();
        if (!faults.isEmpty()) {
            add(
                    Kind.COMPLAINT,
                    Phrase.of(
                                    "the axis of node {node} goes to fault {count} times, first {after} into the capture, last"
                                            + " told to {command}")
                            .with("node", node.number())
                            .with("count", faults.size())
                            .with(
                                    "after",
                                    time(faults.get(0).atNs() - bus.stamps().firstNs()),
                                    "s")
                            .with("command", faults.get(0).command().words()));
        }
    }

    private static Phrase complaint(Node node, String what, Map<? extends Number, Long> codes, int digits) {
        String list = codes.entrySet().stream()
                .limit(MOST_OF_A_KIND)
                .map(e -> String.format(
                                Locale.ROOT, "0x%0" + digits + "X", e.getKey().longValue())
                        + CodeWords.of(e.getKey().longValue(), digits)
                        + (e.getValue() > 1 ? ", " + e.getValue() + " times" : ""))
                .collect(Collectors.joining("; "));
        return Phrase.of("node {node}, {what}: {codes}")
                .with("node", node.number())
                .with("what", what)
                .with("codes", list);
    }

    /** Those that carry most come first: they move axes. */
    private void releases() {
        List<IdTraffic> byBytes = bus.identifiers().stream()
                .sorted(Comparator.comparingInt(IdTraffic::mostBytes).reversed())
                .toList();
        for (IdTraffic id : byBytes) {
            Release release = id.period().release();
            if (release.happened()) {
                add(
                        Kind.RELEASE,
                        Phrase.of("{id}: nothing for {gap}, then {frames} frames in {within}: a queue was let go")
                                .with("id", id.label())
                                .with("gap", time(release.gapNs()), "ms")
                                .with("frames", (double) release.frames())
                                .with("within", time(release.withinNs()), "ms"));
            }
        }
    }

    private static Quantity time(long ns) {
        return Quantity.of(ns * 1e-9, "s");
    }
}
