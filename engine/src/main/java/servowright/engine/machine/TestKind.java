package servowright.engine.machine;

/** Kinds of bench test. */
public enum TestKind {
    /** Driven by another machine with the terminals open: back-EMF. */
    SPIN("spin"),
    /** Direct current through the winding: resistance. */
    RESISTANCE("resistance"),
    /** Voltage step on the locked rotor: inductance. */
    INDUCTANCE_STEP("inductance step");

    private final String words;

    TestKind(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
