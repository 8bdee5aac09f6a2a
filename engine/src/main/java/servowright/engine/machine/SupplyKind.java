package servowright.engine.machine;

/** What feeds the machine. */
public enum SupplyKind {
    /** Takes current back, up to a limit. */
    BATTERY("battery"),
    /** A power supply unit: takes nothing back unless said otherwise. */
    MAINS("mains");

    private final String words;

    SupplyKind(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
