package servowright.engine.worksheet.bus;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bus.Message;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Stated;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;

/**
 * The messages that a worksheet was given, highest priority first, as the analysis takes them.
 *
 * @param messages in their order
 * @param queues   per message the name of the first-in-first-out queue it is sent from; empty for priority order
 */
record MessageSet(List<Message> messages, List<String> queues) {
    MessageSet {
        messages = List.copyOf(messages);
        queues = List.copyOf(queues);
    }

    /** Messages as rows. */
    static Input input() {
        return Input.row(
                        "message",
                        "a message, highest priority first",
                        "steer, 8, 10 ms",
                        Input.text("name", "its name", "steer"),
                        Input.count("bytes", "bytes of data", 0, 64, "8"),
                        positive("period", "shortest time between two of it", "10 ms"),
                        positive("deadline", "time from its event to its last bit; without it the period", "5 ms"),
                        BusInputs.span("jitter", "how much later than its event it may be queued", "0.2 ms"),
                        Input.text("queue", "the queue, or the node with few buffers, that it is sent from", "node-1"))
                .repeatable();
    }

    private static Input positive(String name, String meaning, String example) {
        return Input.quantity(name, Dimension.TIME, meaning, example)
                .within(Quantity.of(1, "us"), Quantity.of(1e4, "s"));
    }

    /** The messages given; {@code bitNs} is the nominal bit time and {@code dataNs} that of the data phase. */
    static MessageSet of(Inputs inputs, long bitNs, long dataNs) {
        List<Message> messages = new ArrayList<>();
        List<String> queues = new ArrayList<>();
        for (Inputs.Value row : inputs.all("message")) {
            int bytes = (int) Math.rint(
                    row.cell("bytes").orElseThrow().known().orElseThrow().si());
            long period = shortest(row, "period").orElseThrow();
            long deadline = shortest(row, "deadline").orElse(period);
            long jitter = stated(row, "jitter").map(s -> nanoseconds(s.upper())).orElse(0L);
            long send = BusInputs.longestNs(inputs, bytes, bitNs, dataNs);
            messages.add(new Message(text(row, "name"), send, period, jitter, deadline));
            queues.add(text(row, "queue"));
        }
        return new MessageSet(messages, queues);
    }

    /** The part of a row as it was typed; empty when it was left out. */
    static String text(Inputs.Value row, String name) {
        return row.cell(name).map(Inputs.Value::text).orElse("");
    }

    private static Optional<Stated> stated(Inputs.Value row, String name) {
        return row.cell(name).flatMap(Inputs.Value::stated);
    }

    /** Periods and deadlines count with their shortest. */
    private static Optional<Long> shortest(Inputs.Value row, String name) {
        return stated(row, name).map(s -> nanoseconds(s.lower()));
    }

    private static long nanoseconds(Quantity time) {
        return Math.round(1e9 * time.si());
    }

    boolean queued() {
        return queues.stream().anyMatch(q -> !q.isEmpty());
    }

    /** Per message the number of its queue, or -1. */
    List<Integer> groups() {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        List<Integer> groups = new ArrayList<>();
        for (String queue : queues) {
            if (queue.isEmpty()) {
                groups.add(-1);
            } else {
                numbers.putIfAbsent(queue, numbers.size());
                groups.add(numbers.getOrDefault(queue, -1));
            }
        }
        return groups;
    }

    /** Per message the number of its node; one without a queue is alone on its node. */
    List<Integer> nodes() {
        List<Integer> nodes = new ArrayList<>(groups());
        for (int i = 0; i < nodes.size(); i++) {
            if (nodes.get(i) < 0) {
                nodes.set(i, -1 - i);
            }
        }
        return nodes;
    }

    /** Per message the buffers of its node, as many for each. */
    List<Integer> buffers(int each) {
        return messages.stream().map(m -> each).toList();
    }

    /** Place of a message of that name; -1 if there is none. */
    int place(String name) {
        for (int i = 0; i < messages.size(); i++) {
            if (messages.get(i).name().equals(name)) {
                return i;
            }
        }
        return -1;
    }
}
