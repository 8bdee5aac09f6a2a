package servowright.engine.prediction;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.UnaryOperator;
import servowright.engine.bench.CapturedBus;
import servowright.engine.bench.SignalScale;
import servowright.engine.bus.ErrorState;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.Stream;
import servowright.engine.bus.traffic.Traffic;
import servowright.engine.bus.traffic.TrafficSimulation;
import servowright.engine.bus.traffic.Watcher;
import servowright.engine.capture.BitTimes;
import servowright.engine.capture.CaptureSummary;
import servowright.engine.capture.Frame;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.BusCapture;
import servowright.engine.machine.Machine;
import servowright.engine.quantity.Quantity;

/** A capture as the simulation of a plan gives it, two seconds long, with what a case changes. */
public final class InventedCapture {
    private static final long UNTIL_NS = 2_000_000_000L;
    private static final long SEED = 20_260_301;

    private final BusPlan plan;
    private final List<String> nodes;
    private final List<Sender> senders;
    private final List<Stream> streams;
    private double noise;
    private long batchNs = 1000;
    private List<SignalScale> scales = List.of();
    private int bootNode;
    private long bootNs = Long.MAX_VALUE;

    private InventedCapture(BusPlan plan) {
        this.plan = plan;
        this.nodes = new ArrayList<>(PlannedTraffic.nodes(plan));
        Traffic traffic = PlannedTraffic.of(plan);
        this.senders = new ArrayList<>(traffic.senders());
        this.streams = new ArrayList<>(traffic.streams());
    }

    /** Captures of a machine's bus, one for each change; none where it has no plan. */
    static List<CapturedBus> all(Machine machine, List<UnaryOperator<InventedCapture>> changes) {
        return BusStudy.of(machine)
                .found()
                .map(plan -> changes.stream()
                        .map(c -> c.apply(new InventedCapture(plan)).run())
                        .toList())
                .orElse(List.of());
    }

    private int stream(String message) {
        for (int i = 0; i < streams.size(); i++) {
            if (streams.get(i).name().equals(message)) {
                return i;
            }
        }
        throw new IllegalArgumentException("no message " + message + " in " + streams);
    }

    /** A node without power for a while. */
    public InventedCapture off(String node, long fromMs, long toMs) {
        int n = nodes.indexOf(node);
        senders.set(n, senders.get(n).off(fromMs * 1_000_000, toMs * 1_000_000));
        return this;
    }

    /** All nodes but the host without power for a while. */
    public InventedCapture stopped(long fromMs, long toMs) {
        nodes.stream().filter(n -> !n.equals("host")).forEach(n -> off(n, fromMs, toMs));
        return this;
    }

    /** A message with a longer period. */
    public InventedCapture stretched(String message, double by) {
        int i = stream(message);
        Stream s = streams.get(i);
        long period = Math.round(s.periodNs() * by);
        streams.set(
                i,
                new Stream(
                        s.name(), s.node(), s.id(), s.bytes(), s.fd(), period, s.offsetNs(), s.jitterNs(), s.fill()));
        return this;
    }

    /** A message that is queued up to so much late. */
    public InventedCapture jittering(String message, long ns) {
        int i = stream(message);
        streams.set(i, streams.get(i).jittering(ns));
        return this;
    }

    /** A second node that sends the same message, so much later. */
    public InventedCapture twin(String message, long laterNs) {
        Stream s = streams.get(stream(message));
        senders.add(Sender.good("second"));
        int node = senders.size() - 1;
        streams.add(new Stream("second", node, s.id(), s.bytes(), s.fd(), s.periodNs(), laterNs, 0, s.fill()));
        return this;
    }

    /** A message that is in no plan. */
    public InventedCapture further(int id, long periodNs) {
        streams.add(Stream.of("further", 0, id, 8, periodNs, 300_000));
        return this;
    }

    /** Bits turned over by noise. */
    public InventedCapture noisy(double share) {
        noise = share;
        return this;
    }

    /** Stamps of a computer that looks every so often. */
    public InventedCapture batched(long ns) {
        batchNs = ns;
        return this;
    }

    /** A speed that shows so many times the rate of its position. */
    public InventedCapture scaled(double ratio) {
        scales = List.of(new SignalScale(
                "arm position", "arm speed", Known.exact(Quantity.number(ratio), Origin.MEASURED, "capture")));
        return this;
    }

    /** A node that says it has booted. */
    public InventedCapture booting(int node, long ns) {
        bootNode = node;
        bootNs = ns;
        return this;
    }

    CapturedBus run() {
        servowright.engine.capture.Traffic seen =
                servowright.engine.capture.Traffic.at(new BitTimes(plan.bitNs(), plan.dataBitNs()));
        Traffic traffic = new Traffic(plan.bitNs(), plan.dataBitNs(), senders, streams, noise, Traffic.USUAL_DEPTH);
        TrafficSimulation.run(traffic, UNTIL_NS, new SplittableRandom(SEED), new Recorder(seen));
        CaptureSummary summary = new CaptureSummary("log lines", 1, 0, 0, 0, 0, List.of("can0"), List.of());
        BusCapture declared =
                new BusCapture(Invented.place("captures / 1"), "recordings/bus.log", Optional.empty(), List.of());
        return new CapturedBus(declared, summary, "can0", seen.seen().get(0), scales);
    }

    /** Hands what the simulation sends to the analysis of captures. */
    private final class Recorder implements Watcher {
        private final servowright.engine.capture.Traffic seen;
        private final Frame frame = new Frame();

        Recorder(servowright.engine.capture.Traffic seen) {
            this.seen = seen;
        }

        private long stamp(long ns) {
            return (ns + batchNs - 1) / batchNs * batchNs;
        }

        @Override
        public void frame(Stream stream, long eventNs, long startNs, long endNs, byte[] payload) {
            if (endNs > bootNs) {
                bootNs = Long.MAX_VALUE;
                frame.start(stamp(endNs - 500_000), 0, 0x700 + bootNode, 0).sized(1);
                frame.data()[0] = 0;
                seen.frame(frame);
            }
            System.arraycopy(payload, 0, frame.data(), 0, payload.length);
            int flags = stream.id() > 0x7ff ? Frame.EXTENDED : 0;
            seen.frame(frame.start(stamp(endNs), 0, stream.id(), flags).sized(payload.length));
        }

        @Override
        public void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {
            int kind = why == Spoilt.NOT_ACKNOWLEDGED ? 0x20 : 0x08;
            Arrays.fill(frame.data(), (byte) 0);
            frame.data()[6] = (byte) Math.min(255, state.transmit());
            seen.frame(frame.start(stamp(endNs), 0, kind | 0x200, Frame.ERROR).sized(8));
        }

        @Override
        public void left(Sender sender, long ns) {
            seen.frame(frame.start(stamp(ns), 0, 0x40, Frame.ERROR).sized(8));
        }
    }
}
