package servowright.engine.capture;

/**
 * What an error report of a controller is about. Numbers as in the kernel's header for CAN errors (seen).
 */
public enum ErrorClass {
    SEND_TIMEOUT(0x001, "sending timed out"),
    ARBITRATION_LOST(0x002, "arbitration lost"),
    CONTROLLER(0x004, "state of the controller"),
    PROTOCOL(0x008, "protocol violated"),
    TRANSCEIVER(0x010, "transceiver"),
    NO_ACKNOWLEDGE(0x020, "nobody acknowledged"),
    BUS_OFF(0x040, "off the bus"),
    BUS_ERROR(0x080, "bus error"),
    RESTARTED(0x100, "restarted"),
    COUNTERS(0x200, "counters stated");

    private final int bit;
    private final String words;

    ErrorClass(int bit, String words) {
        this.bit = bit;
        this.words = words;
    }

    public String words() {
        return words;
    }

    /** Whether a report is of this class; several may hold at once. */
    public boolean in(Frame report) {
        return (report.identifier() & bit) != 0;
    }
}
