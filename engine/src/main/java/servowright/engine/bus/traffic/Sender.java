package servowright.engine.bus.traffic;

import servowright.engine.quantity.Require;

/**
 * A node with its clock, its queue and what may befall it.
 *
 * @param name      what it is
 * @param drift     its clock against true time, relative: 100e-6 makes its periods longer by that
 * @param queue     in which order its messages go to the bus
 * @param buffers   transmit buffers, for {@link Queue#BUFFERS}
 * @param restartNs wait before it comes back after it had to leave the bus; negative if it never does
 * @param offFromNs when it loses power; {@link Long#MAX_VALUE} if never
 * @param offToNs   when it has power again
 * @param destroys  share of the frames of others that it destroys as long as it is error active: a wrong bit rate or sample point
 */
public record Sender(
        String name,
        double drift,
        Queue queue,
        int buffers,
        long restartNs,
        long offFromNs,
        long offToNs,
        double destroys) {
    /** In which order messages of one node go to the bus. */
    public enum Queue {
        /** The most urgent first. */
        PRIORITY,
        /** The oldest first. */
        FIRST_IN_FIRST_OUT,
        /** The most urgent first, but what is in one of few buffers stays there until it is sent. */
        BUFFERS
    }

    public Sender {
        Require.within("drift", -0.1, 0.1, drift, "");
        Require.atLeast("buffers", 1, buffers);
        Require.within("share destroyed", 0, 1, destroys, "");
    }

    /** A node that does everything right. */
    public static Sender good(String name) {
        return new Sender(name, 0, Queue.PRIORITY, 1, 100_000_000, Long.MAX_VALUE, Long.MAX_VALUE, 0);
    }

    /** The same with a clock of its own. */
    public Sender drifting(double relative) {
        return new Sender(name, relative, queue, buffers, restartNs, offFromNs, offToNs, destroys);
    }

    /** The same with another queue. */
    public Sender queueing(Queue other, int count) {
        return new Sender(name, drift, other, count, restartNs, offFromNs, offToNs, destroys);
    }

    /** The same without power for a while. */
    public Sender off(long fromNs, long toNs) {
        return new Sender(name, drift, queue, buffers, restartNs, fromNs, toNs, destroys);
    }

    /** The same, destroying what others send. */
    public Sender destroying(double share) {
        return new Sender(name, drift, queue, buffers, restartNs, offFromNs, offToNs, share);
    }

    boolean powered(long ns) {
        return ns < offFromNs || ns >= offToNs;
    }
}
