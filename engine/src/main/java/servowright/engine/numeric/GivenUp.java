package servowright.engine.numeric;

/**
 * Ends a long computation whose answer nobody wants any more. Every loop that can go on for long asks in each round; whoever gives
 * up interrupts the thread that computes.
 */
public final class GivenUp extends RuntimeException {
    private static final long serialVersionUID = 1;

    private GivenUp() {
        super("the computation was given up", null, false, false);
    }

    /** Goes on, or ends the computation. */
    public static void check() {
        if (Thread.currentThread().isInterrupted()) {
            throw new GivenUp();
        }
    }
}
