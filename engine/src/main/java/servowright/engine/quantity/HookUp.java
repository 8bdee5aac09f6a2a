package servowright.engine.quantity;

/**
 * How a resistance or inductance of a three-phase winding was contacted. Reading R of a star-equivalent phase resistance
 * 1: two terminals 2, one terminal against the two others joined 1.5, phase 1. It does not depend on whether the winding
 * is star or delta inside.
 */
public enum HookUp {
    /** Between two terminals, the third open. */
    TWO_TERMINALS("two terminals", 2.0),
    /** One terminal against the two others joined. */
    ONE_AGAINST_TWO("one against two", 1.5),
    /** The star-equivalent phase itself. */
    PHASE("phase", 1.0);

    private final String words;
    private final double perPhase;

    HookUp(String words, double perPhase) {
        this.words = words;
        this.perPhase = perPhase;
    }

    /** The words people write in square brackets behind the figure. */
    public String words() {
        return words;
    }

    /** Reading divided by the star-equivalent phase value, for a symmetrical non-salient winding. */
    public double perPhase() {
        return perPhase;
    }
}
