package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * A message on the bus as the response-time analysis sees it. All times in ns.
 *
 * @param name       what it is
 * @param sendNs     longest time it holds the bus, C, intermission included
 * @param periodNs   shortest time between two queueings, T
 * @param jitterNs   how much later than its event it may be queued, J
 * @param deadlineNs from the event to the last bit, D
 */
public record Message(String name, long sendNs, long periodNs, long jitterNs, long deadlineNs) {
    public Message {
        Require.positive("sending time of " + name, (double) sendNs, "ns");
        Require.positive("period of " + name, (double) periodNs, "ns");
        Require.notNegative("jitter of " + name, (double) jitterNs, "ns");
        Require.positive("deadline of " + name, (double) deadlineNs, "ns");
    }

    /** The same message, queued up to so much later. */
    public Message later(long moreJitterNs) {
        return moreJitterNs == 0 ? this : new Message(name, sendNs, periodNs, jitterNs + moreJitterNs, deadlineNs);
    }

    /** The same message with a frame of another length. */
    public Message sending(long otherNs) {
        return new Message(name, otherNs, periodNs, jitterNs, deadlineNs);
    }
}
