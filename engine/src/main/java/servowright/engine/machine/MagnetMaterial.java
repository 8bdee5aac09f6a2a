package servowright.engine.machine;

/** What the rotor magnets are made of. */
public enum MagnetMaterial {
    NEODYMIUM("neodymium"),
    SAMARIUM_COBALT("samarium cobalt"),
    FERRITE("ferrite");

    private final String words;

    MagnetMaterial(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
