package servowright.engine.bus;

/**
 * How long an error occupies the bus after the bit in which it is found: flag, echo of the flag by the others, delimiter of 8 bits,
 * intermission of 3. An active flag has 6 bits and meets the others' flags within 6 more; a passive flag has 6 recessive bits.
 * <b>Source.</b> ISO 11898-1 (text not opened, recalled); lengths computed. The response-time analysis charges 31 bits.
 */
public final class ErrorFrame {
    /** Flags of all nodes at once, delimiter, intermission. */
    public static final int LEAST_BITS = 17;

    /** The others answer with a flag of their own after the first has ended. */
    public static final int MOST_BITS = 23;

    /** Bits a passive sender waits on top of the intermission before it may send again. */
    public static final int SUSPEND_BITS = 8;

    private ErrorFrame() {}
}
