package servowright.engine.machine;

/** How messages without an identifier of their own get one. */
public enum IdScheme {
    /** The predefined connection set of CiA 301. */
    PREDEFINED("predefined connection set"),
    /** The faster, the higher. */
    BY_RATE("by rate"),
    /** An order that meets all deadlines if there is one. */
    BY_DEADLINES("by deadlines");

    private final String words;

    IdScheme(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
