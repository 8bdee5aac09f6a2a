package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import servowright.engine.bus.PredefinedConnections;
import servowright.engine.known.Known;
import servowright.engine.machine.Axis;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.BusMessage;
import servowright.engine.machine.Machine;
import servowright.engine.machine.MessageFigure;

/** The messages that a machine's bus has to carry, from what every axis has and what was declared besides. */
final class BusTraffic {
    static final String HOST = "host";
    static final String SYNC = "sync";
    private static final String REQUEST = "service request";
    private static final String ANSWER = "service answer";

    /**
     * A message that is wanted, before it has its place.
     *
     * @param given      identifier that was declared
     * @param predefined identifier in the predefined connection set, if it has one there
     * @param onSync     whether the SYNC starts it
     */
    record Wish(
            String name,
            String from,
            OptionalInt given,
            OptionalInt predefined,
            int bytes,
            long periodNs,
            long deadlineNs,
            long jitterNs,
            boolean onSync) {
        /** By its name; a name stands once in a plan. */
        @Override
        public int hashCode() {
            return name.hashCode();
        }

        /** Requests of the host and their answers come when somebody asks; everything else at its period. */
        boolean steady() {
            return !name.equals(REQUEST) && !name.equals(ANSWER);
        }
    }

    private static final int USUAL_BYTES = 8;

    private final Bus bus;
    private final List<Wish> wishes = new ArrayList<>();

    private BusTraffic(Bus bus) {
        this.bus = bus;
    }

    static List<Wish> of(Machine machine) {
        BusTraffic t = new BusTraffic(machine.bus());
        t.everybody();
        int place = 0;
        for (Axis axis : machine.axes().values()) {
            place++;
            t.axis(axis, node(axis, place));
        }
        for (BusMessage m : machine.bus().messages().values()) {
            if (t.wishes.stream().noneMatch(w -> w.name().equals(m.name()))) {
                t.further(m);
            }
        }
        return t.wishes;
    }

    static int node(Axis axis, int place) {
        return axis.figures().known(AxisFigure.NODE).map(k -> (int) k.si()).orElse(place);
    }

    private void everybody() {
        period(BusFigure.SYNC).ifPresent(p -> add(SYNC, HOST, PredefinedConnections.SYNC.identifier(1), 0, p));
        period(BusFigure.SERVICE_PERIOD).ifPresent(p -> {
            int bytes = bytes(BusFigure.SERVICE_BYTES);
            add(REQUEST, HOST, PredefinedConnections.SERVICE_REQUEST.identifier(1), bytes, p);
            add(ANSWER, "any axis", PredefinedConnections.SERVICE_ANSWER.identifier(1), bytes, p);
        });
    }

    private void axis(Axis axis, int node) {
        String name = axis.name();
        period(BusFigure.COMMAND_PERIOD)
                .ifPresent(p -> add(
                        name + " command",
                        HOST,
                        PredefinedConnections.COMMAND.identifier(node),
                        bytes(BusFigure.COMMAND_BYTES),
                        p));
        period(BusFigure.FEEDBACK_PERIOD)
                .ifPresent(p -> add(
                        name + " feedback",
                        name,
                        PredefinedConnections.FEEDBACK.identifier(node),
                        bytes(BusFigure.FEEDBACK_BYTES),
                        p));
        period(BusFigure.HEARTBEAT)
                .ifPresent(p -> add(name + " heartbeat", name, PredefinedConnections.HEARTBEAT.identifier(node), 1, p));
    }

    /** A message that every axis or every bus has; what was declared under its name counts instead. */
    private void add(String name, String from, int predefined, int bytes, long periodNs) {
        Optional<BusMessage> own = Optional.ofNullable(bus.messages().get(name));
        long period = own.flatMap(m -> ns(m, MessageFigure.PERIOD)).orElse(periodNs);
        long hostJitter = from.equals(HOST)
                ? bus.figures().known(BusFigure.HOST_JITTER).map(BusTraffic::ns).orElse(0L)
                : 0L;
        boolean onSync = name.endsWith(" feedback")
                && bus.figures().known(BusFigure.SYNC).isPresent();
        wishes.add(new Wish(
                name,
                own.flatMap(BusMessage::from).orElse(from),
                own.map(BusMessage::id).orElse(OptionalInt.empty()),
                OptionalInt.of(predefined),
                own.flatMap(m -> m.figures().known(MessageFigure.BYTES))
                        .map(k -> (int) k.si())
                        .orElse(bytes),
                period,
                own.flatMap(m -> ns(m, MessageFigure.DEADLINE)).orElse(period),
                own.flatMap(m -> ns(m, MessageFigure.JITTER)).orElse(hostJitter),
                onSync));
    }

    private void further(BusMessage m) {
        Optional<Long> period = ns(m, MessageFigure.PERIOD);
        if (period.isEmpty()) {
            return;
        }
        wishes.add(new Wish(
                m.name(),
                m.from().orElse(HOST),
                m.id(),
                OptionalInt.empty(),
                m.figures().known(MessageFigure.BYTES).map(k -> (int) k.si()).orElse(USUAL_BYTES),
                period.get(),
                ns(m, MessageFigure.DEADLINE).orElse(period.get()),
                ns(m, MessageFigure.JITTER).orElse(0L),
                false));
    }

    /** Names of messages whose period is not said: they cannot be planned. */
    static List<String> withoutPeriod(Machine machine) {
        List<String> planned = of(machine).stream().map(Wish::name).toList();
        return machine.bus().messages().entrySet().stream()
                .filter(e -> !planned.contains(e.getKey()))
                .map(Map.Entry::getKey)
                .toList();
    }

    private int bytes(BusFigure key) {
        return bus.figures().known(key).map(k -> (int) k.si()).orElse(USUAL_BYTES);
    }

    private Optional<Long> period(BusFigure key) {
        return bus.figures().known(key).map(BusTraffic::ns);
    }

    private static Optional<Long> ns(BusMessage m, MessageFigure key) {
        return m.figures().known(key).map(BusTraffic::ns);
    }

    static long ns(Known seconds) {
        return Math.round(seconds.si() * 1e9);
    }
}
