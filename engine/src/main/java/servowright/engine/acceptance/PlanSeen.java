package servowright.engine.acceptance;

import java.util.List;
import servowright.engine.bench.CapturedBus;
import servowright.engine.capture.BusTraffic;
import servowright.engine.capture.IdTraffic;
import servowright.engine.capture.Service;
import servowright.engine.known.Outcome;
import servowright.engine.prediction.BusPlan;

/**
 * A capture held against the plan of the bus.
 *
 * @param messages  every message of the plan, highest priority first; empty without a plan
 * @param unplanned identifiers that are in no plan; empty without a plan
 */
public record PlanSeen(CapturedBus capture, List<MessageSeen> messages, List<IdTraffic> unplanned) {
    /** Captures with fewer stamped frames say little about time. */
    private static final int ENOUGH = 20;

    public PlanSeen {
        messages = List.copyOf(messages);
        unplanned = List.copyOf(unplanned);
    }

    /** Finds every message of the plan in the capture, and what else is there. */
    public static PlanSeen of(Outcome<BusPlan> plan, CapturedBus capture) {
        BusTraffic traffic = capture.traffic();
        List<MessageSeen> messages = plan.found()
                .map(p -> p.messages().stream()
                        .map(m -> MessageSeen.of(m, traffic))
                        .toList())
                .orElse(List.of());
        List<IdTraffic> unplanned = messages.isEmpty()
                ? List.of()
                : traffic.identifiers().stream()
                        .filter(id -> messages.stream()
                                .flatMap(m -> m.seen().stream())
                                .noneMatch(id::equals))
                        .filter(id ->
                                traffic.service(id).filter(PlanSeen::occasional).isEmpty())
                        .toList();
        return new PlanSeen(capture, messages, unplanned);
    }

    /** What nodes say when there is reason to, and no plan can know. */
    private static boolean occasional(Service service) {
        return switch (service) {
            case NETWORK_MANAGEMENT, EMERGENCY, SERVICE_REQUEST, SERVICE_REPLY -> true;
            default -> false;
        };
    }

    /** Whether the stamps are good enough to judge times. */
    public boolean timed() {
        BusTraffic traffic = capture.traffic();
        return traffic.timed() >= ENOUGH && !traffic.stamps().ofTheHost(traffic.frames());
    }

    /** Name under which findings speak of it. */
    public String subject(int captures) {
        return captures == 1 ? "bus" : capture.test().recording();
    }
}
