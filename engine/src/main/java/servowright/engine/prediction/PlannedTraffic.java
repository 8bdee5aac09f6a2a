package servowright.engine.prediction;

import java.util.List;
import servowright.engine.bus.PredefinedConnections;
import servowright.engine.bus.traffic.Sender;
import servowright.engine.bus.traffic.Stream;
import servowright.engine.bus.traffic.Stream.Fill;
import servowright.engine.bus.traffic.Traffic;

/** The traffic of a plan as the simulation takes it: every message of the plan, from its node, as late as the plan lets it be. */
public final class PlannedTraffic {
    private static final int NODE = 0x7f;
    private static final int CLASSICAL_BYTES = 8;

    private PlannedTraffic() {}

    /** All nodes do what they should. */
    public static Traffic of(BusPlan plan) {
        List<String> nodes = nodes(plan);
        List<Stream> streams = plan.messages().stream()
                .map(m -> new Stream(
                        m.name(),
                        nodes.indexOf(m.from()),
                        m.id(),
                        m.bytes(),
                        m.bytes() > CLASSICAL_BYTES || plan.dataBitNs() != plan.bitNs(),
                        m.response().message().periodNs(),
                        0,
                        m.response().message().jitterNs(),
                        heartbeat(m) ? Fill.OPERATIONAL : Fill.RANDOM))
                .toList();
        return new Traffic(
                plan.bitNs(),
                plan.dataBitNs(),
                nodes.stream().map(Sender::good).toList(),
                streams,
                0,
                Traffic.USUAL_DEPTH);
    }

    private static boolean heartbeat(PlannedMessage m) {
        int node = m.id() & NODE;
        return node > 0 && m.bytes() == 1 && m.id() == PredefinedConnections.HEARTBEAT.identifier(node);
    }

    /** The nodes of a plan in the order in which the simulation numbers them. */
    public static List<String> nodes(BusPlan plan) {
        return plan.messages().stream().map(PlannedMessage::from).distinct().toList();
    }
}
