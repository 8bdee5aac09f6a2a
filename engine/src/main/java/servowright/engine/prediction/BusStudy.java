package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import servowright.engine.bus.ClassicalFrame;
import servowright.engine.bus.FaultModel;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.IdLength;
import servowright.engine.bus.Identifiers;
import servowright.engine.bus.Message;
import servowright.engine.bus.PriorityOrder;
import servowright.engine.bus.ResponseTime;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Figures;
import servowright.engine.machine.IdScheme;
import servowright.engine.machine.Machine;
import servowright.engine.prediction.BusTraffic.Wish;
import servowright.engine.quantity.Quantity;

/** Does the bus carry its traffic, and how late can each message come? */
public final class BusStudy {
    private static final int MOST_ROUNDS = 20;
    private static final int CLASSICAL_BYTES = 8;
    private static final int MOST_STANDARD = 0x7ff;

    private final long bitNs;
    private final long dataBitNs;
    private final boolean fd;

    private BusStudy(Figures<BusFigure> bus, Known rate) {
        this.bitNs = Math.round(1e9 / rate.si());
        Optional<Known> data = bus.known(BusFigure.DATA_RATE);
        this.fd = data.isPresent();
        this.dataBitNs = data.map(d -> Math.round(1e9 / d.si())).orElse(bitNs);
    }

    /** The plan of a machine; nothing is missing on a bus of which nothing was said but that it is there. */
    public static Outcome<BusPlan> of(Machine machine) {
        Figures<BusFigure> bus = machine.bus().figures();
        List<Wish> wishes = BusTraffic.of(machine);
        Inquiry in = new Inquiry();
        Supplier<Known> rate = in.take(Wanted.figure(bus, BusFigure.RATE, "the bus"));
        if (wishes.isEmpty()) {
            in.take(Outcome.missing(
                    "messages of the bus", "say in machine.yaml, bus, how often commands go out: command / period"));
        }
        for (String name : BusTraffic.withoutPeriod(machine)) {
            in.take(Outcome.missing("period of the message " + name, "state it in machine.yaml, bus / messages"));
        }
        boolean fd = bus.known(BusFigure.DATA_RATE).isPresent();
        wishes.stream()
                .filter(w -> !fd && w.bytes() > CLASSICAL_BYTES)
                .forEach(w -> in.take(Outcome.missing(
                        "a frame that carries the " + w.bytes() + " bytes of " + w.name(),
                        "at most 8 bytes, or FD frames: state data_rate")));
        IdScheme scheme = machine.bus().ids().orElse(IdScheme.PREDEFINED);
        if (machine.bus().ids().isEmpty()) {
            in.assume(Phrase.of("identifiers of the predefined connection set where none is given"));
        }
        return in.answer(() -> {
            BusPlan plan = new BusStudy(bus, rate.get()).plan(wishes, scheme);
            note(in, plan, rate.get());
            return plan;
        });
    }

    private BusPlan plan(List<Wish> wishes, IdScheme scheme) {
        Map<Wish, Integer> ids = numbered(wishes, scheme);
        List<Wish> order = wishes.stream()
                .sorted(Comparator.comparingLong(w -> arbitration(ids.getOrDefault(w, 0))))
                .toList();
        List<ResponseTime> found = settled(order, ids);
        List<PlannedMessage> planned = new ArrayList<>();
        double least = 0;
        for (int i = 0; i < order.size(); i++) {
            Wish w = order.get(i);
            int id = ids.getOrDefault(w, 0);
            long shortest = leastNs(id, w.bytes());
            least += (double) shortest / w.periodNs();
            planned.add(new PlannedMessage(
                    w.name(), w.from(), id, w.bytes(), w.given().isPresent(), w.steady(), shortest, found.get(i)));
        }
        double load = ResponseTime.utilisation(
                found.stream().map(ResponseTime::message).toList());
        return new BusPlan(planned, load, least, bitNs, dataBitNs);
    }

    /** A message that the SYNC starts is as unsteady as the SYNC's arrival: repeated until that settles. */
    private List<ResponseTime> settled(List<Wish> order, Map<Wish, Integer> ids) {
        long syncJitter = 0;
        List<ResponseTime> found = List.of();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            long jitter = syncJitter;
            found = ResponseTime.of(
                    order.stream()
                            .map(w -> message(w, ids.getOrDefault(w, 0)).later(w.onSync() ? jitter : 0))
                            .toList(),
                    bitNs,
                    FaultModel.none());
            syncJitter = unsteadiness(order, ids, found);
            if (syncJitter == jitter) {
                break;
            }
        }
        return found;
    }

    private long unsteadiness(List<Wish> order, Map<Wish, Integer> ids, List<ResponseTime> found) {
        for (int i = 0; i < order.size(); i++) {
            Wish w = order.get(i);
            long worst = found.get(i).worstNs();
            if (w.name().equals(BusTraffic.SYNC) && worst != Long.MAX_VALUE) {
                return worst - leastNs(ids.getOrDefault(w, 0), w.bytes());
            }
        }
        return 0;
    }

    private Map<Wish, Integer> numbered(List<Wish> wishes, IdScheme scheme) {
        List<Wish> order = switch (scheme) {
            case PREDEFINED -> wishes;
            case BY_RATE -> sorted(wishes, PriorityOrder::byRate);
            case BY_DEADLINES ->
                sorted(
                        wishes,
                        all -> PriorityOrder.meetingDeadlines(all, bitNs, FaultModel.none())
                                .orElseGet(() -> PriorityOrder.byRate(all)));
        };
        List<Wish> merged = aroundGiven(order);
        List<Integer> ids = Identifiers.inOrder(merged.stream()
                .map(w -> w.given().isPresent() || scheme != IdScheme.PREDEFINED ? w.given() : w.predefined())
                .toList());
        Map<Wish, Integer> all = new LinkedHashMap<>();
        for (int i = 0; i < merged.size(); i++) {
            all.put(merged.get(i), ids.get(i));
        }
        return all;
    }

    private List<Wish> sorted(List<Wish> wishes, UnaryOperator<List<Message>> order) {
        Map<String, Wish> byName = new LinkedHashMap<>();
        wishes.forEach(w -> byName.put(w.name(), w));
        return order.apply(wishes.stream().map(w -> message(w, 0)).toList()).stream()
                .flatMap(m -> Optional.ofNullable(byName.get(m.name())).stream())
                .toList();
    }

    /** The given identifiers in their own order, at the places where messages with one stand. */
    private static List<Wish> aroundGiven(List<Wish> order) {
        List<Wish> given = order.stream()
                .filter(w -> w.given().isPresent())
                .sorted(Comparator.comparingLong(w -> arbitration(w.given().orElse(0))))
                .toList();
        List<Wish> merged = new ArrayList<>(order);
        int next = 0;
        for (int i = 0; i < merged.size(); i++) {
            if (merged.get(i).given().isPresent()) {
                merged.set(i, given.get(next++));
            }
        }
        return merged;
    }

    /** A standard identifier wins against an extended one with the same first 11 bits. */
    private static long arbitration(int id) {
        return id <= MOST_STANDARD ? (long) id << 19 : ((long) (id >>> 18) << 19) + (1 << 18) + (id & 0x3ffff);
    }

    private Message message(Wish w, int id) {
        return new Message(w.name(), mostNs(id, w.bytes()), w.periodNs(), w.jitterNs(), w.deadlineNs());
    }

    private long mostNs(int id, int bytes) {
        return fd
                ? FdFrame.most(length(id), FdFrame.codeFor(bytes), true).nanoseconds(bitNs, dataBitNs)
                : ClassicalFrame.mostBits(length(id), bytes) * bitNs;
    }

    private long leastNs(int id, int bytes) {
        return fd
                ? FdFrame.least(length(id), FdFrame.codeFor(bytes), true).nanoseconds(bitNs, dataBitNs)
                : ClassicalFrame.leastBits(length(id), bytes) * bitNs;
    }

    private static IdLength length(int id) {
        return id <= MOST_STANDARD ? IdLength.STANDARD : IdLength.EXTENDED;
    }

    private static void note(Inquiry in, BusPlan plan, Known rate) {
        in.sheet()
                .note(
                        "load of the bus, worst case",
                        "{U} = Σ C / T",
                        "%",
                        "Davis, Burns, Bril, Lukkien 2007 (recalled)",
                        Known.exact(Quantity.number(plan.load()), Origin.DERIVED, "bus plan"),
                        Term.of("rate", rate, "kbit/s"));
        for (PlannedMessage m : plan.messages()) {
            if (m.arrivalJitterNs() != Long.MAX_VALUE) {
                in.sheet()
                        .note(
                                m.name() + ", identifier 0x" + Integer.toHexString(m.id()),
                                "{R} = {J} + w + {C}, within {D}",
                                "ms",
                                "Davis, Burns, Bril, Lukkien 2007 (recalled)",
                                time(m.response().worstNs()),
                                Term.of("J", time(m.response().message().jitterNs()), "ms"),
                                Term.of("C", time(m.response().message().sendNs()), "ms"),
                                Term.of("D", time(m.response().message().deadlineNs()), "ms"));
            }
        }
    }

    private static Known time(long ns) {
        return Known.exact(Quantity.of(ns * 1e-9, "s"), Origin.DERIVED, "bus plan");
    }
}
