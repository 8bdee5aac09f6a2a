package servowright.engine.bus;

/**
 * How a node stands after the errors it has seen: two counters and what follows from them.
 *
 * <p>A sender's error adds 8 to its transmit counter, a receiver's 1 to its receive counter; each success takes 1 off. From 96 on a
 * node warns, above 127 it is passive and signals errors with recessive bits only, above 255 in the transmit counter it leaves the
 * bus. A passive sender that lacks nothing but an acknowledgement does not count on: a node alone stays at 128 and repeats for ever.
 * <b>Source.</b> ISO 11898-1 (text not opened, rules recalled).
 *
 * @param transmit transmit error counter
 * @param receive  receive error counter
 */
public record ErrorState(int transmit, int receive) {
    /** What a node may still do. */
    public enum Mode {
        ACTIVE,
        WARNING,
        PASSIVE,
        BUS_OFF
    }

    /** A node that has just started. */
    public static final ErrorState FRESH = new ErrorState(0, 0);

    /** Recessive sequences of 11 bits that a node must see before it may come back. */
    public static final int RECOVERY_SEQUENCES = 128;

    private static final int WARNS = 96;
    private static final int PASSIVE_ABOVE = 127;
    private static final int OFF_ABOVE = 255;
    private static final int SENDER_STEP = 8;
    private static final int MOST_RECEIVE = 135;

    /** After an error while sending. */
    public ErrorState sendingFailed() {
        return new ErrorState(transmit + SENDER_STEP, receive);
    }

    /** After a frame that nobody acknowledged. */
    public ErrorState notAcknowledged() {
        return transmit > PASSIVE_ABOVE ? this : sendingFailed();
    }

    /** After an error while receiving. */
    public ErrorState receivingFailed() {
        return new ErrorState(transmit, Math.min(MOST_RECEIVE, receive + 1));
    }

    /** After a frame that was sent well. */
    public ErrorState sent() {
        return transmit == 0 ? this : new ErrorState(transmit - 1, receive);
    }

    /** After a frame that was received well; a passive receiver falls back to 127 or just below. */
    public ErrorState received() {
        return receive == 0 ? this : new ErrorState(transmit, Math.min(receive, PASSIVE_ABOVE + 1) - 1);
    }

    /** What the counters mean. */
    public Mode mode() {
        if (transmit > OFF_ABOVE) {
            return Mode.BUS_OFF;
        }
        int worse = Math.max(transmit, receive);
        if (worse > PASSIVE_ABOVE) {
            return Mode.PASSIVE;
        }
        return worse >= WARNS ? Mode.WARNING : Mode.ACTIVE;
    }

    /** Least time a node that left the bus stays away once it starts to recover: 128 times 11 recessive bits, ns. */
    public static long recoveryNs(long bitNs) {
        return RECOVERY_SEQUENCES * 11L * bitNs;
    }
}
