package servowright.engine.assessment;

import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import servowright.engine.bus.traffic.LogText;
import servowright.engine.bus.traffic.PacketLog;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.StreamFigures;
import servowright.engine.bus.traffic.Traffic;
import servowright.engine.bus.traffic.TrafficFigures;
import servowright.engine.bus.traffic.TrafficSimulation;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.machine.Machine;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.BusStudy;
import servowright.engine.prediction.PlannedMessage;
import servowright.engine.prediction.PlannedTraffic;
import servowright.engine.quantity.Require;

/**
 * The planned traffic of a machine's bus, played for a while before there is a bus.
 *
 * @param messages what became of each, highest priority first
 * @param frames   frames that got through
 * @param broken   frames that were broken off and sent again
 * @param load     share of the time in which the bus was held
 * @param left     nodes that had to leave the bus
 */
public record Rehearsal(List<Played> messages, long frames, long broken, double load, List<String> left) {
    /** Name of the interface in the log. */
    public static final String INTERFACE = "can0";

    /** How the traffic is written down. */
    public enum Form {
        /** Lines as Linux tools write them. */
        LINES,
        /** A pcap file. */
        PACKETS
    }

    /**
     * What is to be played.
     *
     * @param durationNs how long
     * @param seed       the same seed gives the same traffic
     * @param bitErrors  share of bits that noise turns over
     * @param without    a node that loses power half way
     */
    public record Wish(long durationNs, long seed, double bitErrors, Optional<String> without) {
        public Wish {
            Require.positive("duration", (double) durationNs, "ns");
            Require.within("bit errors", 0, 1, bitErrors, "");
        }
    }

    /**
     * What became of a message.
     *
     * @param sent    frames that got through
     * @param lost    messages that found their queue full or their node without power
     * @param worstNs longest time from event to the end of the frame, ns
     * @param boundNs guaranteed longest, ns; {@link Long#MAX_VALUE} without one
     */
    public record Played(String name, String from, String id, long sent, long lost, long worstNs, long boundNs) {}

    public Rehearsal {
        messages = List.copyOf(messages);
        left = List.copyOf(left);
    }

    /** The nodes of the plan, if there is one. */
    public static List<String> nodes(Machine machine) {
        return BusStudy.of(machine).found().map(PlannedTraffic::nodes).orElse(List.of());
    }

    /** Plays the plan of a machine and writes what a recording computer would have seen. */
    public static Outcome<Rehearsal> play(Machine machine, Wish wish, Form form, OutputStream out) {
        return BusStudy.of(machine)
                .fold(
                        a -> new Answer<>(play(a.value(), wish, form, out), a.working(), a.assumptions()),
                        missing -> missing.forAnother());
    }

    private static Rehearsal play(BusPlan plan, Wish wish, Form form, OutputStream out) {
        Traffic traffic = traffic(plan, wish);
        SplittableRandom random = new SplittableRandom(wish.seed());
        try {
            if (form == Form.PACKETS) {
                return of(
                        plan,
                        traffic,
                        TrafficSimulation.run(traffic, wish.durationNs(), random, new PacketLog(out, 0)));
            }
            Writer lines = new OutputStreamWriter(out, StandardCharsets.US_ASCII);
            LogText log = new LogText(lines, INTERFACE, 0);
            Rehearsal played = of(plan, traffic, TrafficSimulation.run(traffic, wish.durationNs(), random, log));
            lines.flush();
            return played;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Traffic traffic(BusPlan plan, Wish wish) {
        Traffic planned = PlannedTraffic.of(plan).noisy(wish.bitErrors());
        List<Sender> senders = planned.senders().stream()
                .map(s -> wish.without().filter(s.name()::equals).isPresent()
                        ? s.off(wish.durationNs() / 2, Long.MAX_VALUE)
                        : s)
                .toList();
        return new Traffic(
                planned.bitNs(),
                planned.dataBitNs(),
                senders,
                planned.streams(),
                planned.bitErrors(),
                planned.queueDepth());
    }

    private static Rehearsal of(BusPlan plan, Traffic traffic, TrafficFigures seen) {
        List<Played> messages = new ArrayList<>();
        for (int k = 0; k < plan.messages().size(); k++) {
            PlannedMessage m = plan.messages().get(k);
            StreamFigures s = seen.streams().get(k);
            String id = String.format(Locale.ROOT, m.extended() ? "0x%08X" : "0x%03X", m.id());
            messages.add(new Played(
                    m.name(),
                    m.from(),
                    id,
                    s.sent(),
                    s.lost(),
                    s.worstNs(),
                    m.response().worstNs()));
        }
        List<String> left = IntStream.range(0, seen.left().size())
                .filter(n -> seen.left().get(n) > 0)
                .mapToObj(n -> traffic.senders().get(n).name())
                .toList();
        return new Rehearsal(messages, seen.frames(), seen.broken(), seen.load(), left);
    }
}
