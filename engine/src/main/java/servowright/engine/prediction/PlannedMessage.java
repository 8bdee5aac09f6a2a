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
 * @param leastNs  shortest time on the bus, ns
 * @param response its guaranteed worst case
 */
public record PlannedMessage(
        String name, String from, int id, int bytes, boolean fixed, long leastNs, ResponseTime response) {
    /** How much the arrival may vary, ns: from the shortest frame on an idle bus to the worst case. */
    public long arrivalJitterNs() {
        return response.worstNs() == Long.MAX_VALUE ? Long.MAX_VALUE : response.worstNs() - leastNs;
    }
}
