package servowright.engine.capture;

/**
 * What a controlword (object 6040) asks of an axis.
 *
 * <p><b>Source.</b> CiA 402, now IEC 61800-7-201, commands of the device control (from memory; masks agree with public device manuals).
 * Clearing a fault takes effect where bit 7 rises; here a set bit counts.
 */
public enum AxisCommand {
    CLEAR_FAULT("clear the fault", 0x80, 0x80),
    DISABLE_VOLTAGE("disable voltage", 0x02, 0x00),
    QUICK_STOP("quick stop", 0x06, 0x02),
    SHUT_DOWN("shut down", 0x07, 0x06),
    SWITCH_ON("switch on", 0x0f, 0x07),
    ENABLE("enable operation", 0x0f, 0x0f);

    private static final AxisCommand[] ALL = values();

    private final String words;
    private final int mask;
    private final int pattern;

    AxisCommand(String words, int mask, int pattern) {
        this.words = words;
        this.mask = mask;
        this.pattern = pattern;
    }

    public String words() {
        return words;
    }

    /** Command of a controlword; every word is one. */
    public static AxisCommand of(int controlword) {
        for (AxisCommand command : ALL) {
            if ((controlword & command.mask) == command.pattern) {
                return command;
            }
        }
        throw new IllegalStateException("no command in " + controlword);
    }
}
