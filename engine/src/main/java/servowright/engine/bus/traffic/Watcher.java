package servowright.engine.bus.traffic;

import servowright.engine.bus.ErrorState;

/** Sees what happens on the bus, in order of time. */
public interface Watcher {
    /** A watcher that looks away. */
    Watcher NONE = new Watcher() {};

    /**
     * A frame got through.
     *
     * @param eventNs  the event it was sent for, ns
     * @param startNs  start of frame
     * @param endNs    end of intermission
     * @param payload  valid during the call only; the first bytes are the frame's
     */
    default void frame(Stream stream, long eventNs, long startNs, long endNs, byte[] payload) {}

    /** What spoilt a frame. */
    enum Spoilt {
        NOISE,
        NOT_ACKNOWLEDGED,
        SAME_IDENTIFIER,
        DESTROYED
    }

    /**
     * A frame was broken off; it will be sent again.
     *
     * @param endNs when the bus is free again
     * @param state of the sender, after it
     */
    default void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {}

    /** A node had to leave the bus. */
    default void left(Sender sender, long ns) {}

    /** A node is back on the bus. */
    default void back(Sender sender, long ns) {}
}
