package servowright.engine.prediction;

import servowright.engine.bus.ResponseTime;

/**
 * A message as the bus will carry it.
 *
 * @param name     what it is
 * @param from     node that sends it
 * @param id       identifier
 * @param bytes    data it carries
 * @param fixed    whether the identifier was given
 * @param steady  whether it comes at its period; otherwise the period is the shortest time between two
 * @param leastNs  shortest time on the bus, ns
 * @param response its guaranteed worst case
 */
public record PlannedMessage(
        String name,
        String from,
        int id,
        int bytes,
        boolean fixed,
        boolean steady,
        long leastNs,
        ResponseTime response) {
    private static final int MOST_STANDARD = 0x7ff;

    /** Whether the identifier has 29 bits. */
    public boolean extended() {
        return id > MOST_STANDARD;
    }

    /** How much the arrival may vary, ns: from the shortest frame on an idle bus to the worst case. */
    public long arrivalJitterNs() {
        return response.worstNs() == Long.MAX_VALUE ? Long.MAX_VALUE : response.worstNs() - leastNs;
    }
}
