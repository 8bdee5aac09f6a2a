package servowright.engine.prediction;

import java.util.List;
import java.util.Optional;

/**
 * The traffic that a machine's bus is to carry.
 *
 * @param messages highest priority first
 * @param load     share of the bus that they take in the worst case
 * @param leastLoad share with the shortest frames
 * @param bitNs    bit time of arbitration, ns
 * @param dataBitNs bit time of FD data, ns; the same as {@code bitNs} on a classical bus
 */
public record BusPlan(List<PlannedMessage> messages, double load, double leastLoad, long bitNs, long dataBitNs) {
    public BusPlan {
        messages = List.copyOf(messages);
    }

    /** The message of that name. */
    public Optional<PlannedMessage> named(String name) {
        return messages.stream().filter(m -> m.name().equals(name)).findFirst();
    }
}
