package servowright.engine.bus;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.bus.ResponseTime.Schedule;

/** Which message should be more urgent than which. */
public final class PriorityOrder {
    private PriorityOrder() {}

    /** The faster, the higher; among equals the tighter deadline, then the shorter frame, then the order given. */
    public static List<Message> byRate(List<Message> messages) {
        return messages.stream()
                .sorted(Comparator.comparingLong(Message::periodNs)
                        .thenComparingLong(Message::deadlineNs)
                        .thenComparingLong(Message::sendNs))
                .toList();
    }

    /**
     * An order that meets all deadlines, if there is one: from the lowest place up, any message that meets its deadline there with all
     * those left above it. <b>Source.</b> Audsley, On priority assignment in fixed priority scheduling, Information Processing Letters 79
     * (2001) 39-44 (recalled); that it holds for this analysis: Davis, Burns, Bril, Lukkien 2007 (recalled).
     */
    public static Optional<List<Message>> meetingDeadlines(List<Message> messages, long bitNs, FaultModel faults) {
        List<Message> left = new ArrayList<>(byRate(messages));
        List<Message> lowest = new ArrayList<>();
        while (!left.isEmpty()) {
            Optional<Message> next = bearsThisPlace(left, lowest, bitNs, faults);
            if (next.isEmpty()) {
                return Optional.empty();
            }
            left.remove(next.get());
            lowest.add(0, next.get());
        }
        return Optional.of(List.copyOf(lowest));
    }

    private static Optional<Message> bearsThisPlace(
            List<Message> left, List<Message> below, long bitNs, FaultModel faults) {
        for (int k = left.size() - 1; k >= 0; k--) {
            Message candidate = left.get(k);
            List<Message> order = new ArrayList<>(left);
            order.remove(k);
            order.add(candidate);
            int at = order.size() - 1;
            order.addAll(below);
            if (ResponseTime.at(at, order, bitNs, faults).schedule() == Schedule.MEETS_DEADLINE) {
                return Optional.of(candidate);
            }
        }
        return Optional.empty();
    }
}
