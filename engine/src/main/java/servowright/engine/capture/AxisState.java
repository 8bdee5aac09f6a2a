package servowright.engine.capture;

/**
 * State of an axis as its statusword (object 6041) tells it.
 *
 * <p><b>Source.</b> CiA 402, now IEC 61800-7-201, state machine of the device control: masks seen in agreement in three public device
 * manuals, the text of the standard not opened. Of the 64 patterns of bits 0 to 3, 5 and 6 twelve mean a state; others are undefined.
 */
public enum AxisState {
    NOT_READY("not ready", 0x4f, 0x00),
    SWITCH_ON_DISABLED("switch-on disabled", 0x4f, 0x40),
    READY("ready to switch on", 0x6f, 0x21),
    SWITCHED_ON("switched on", 0x6f, 0x23),
    ENABLED("operation enabled", 0x6f, 0x27),
    QUICK_STOP("quick stop", 0x6f, 0x07),
    FAULT_REACTION("reacting to a fault", 0x4f, 0x0f),
    FAULT("fault", 0x4f, 0x08),
    UNDEFINED("undefined", 0, -1);

    private static final AxisState[] ALL = values();

    private final String words;
    private final int mask;
    private final int pattern;

    AxisState(String words, int mask, int pattern) {
        this.words = words;
        this.mask = mask;
        this.pattern = pattern;
    }

    public String words() {
        return words;
    }

    /** State of a statusword. */
    public static AxisState of(int statusword) {
        for (AxisState state : ALL) {
            if ((statusword & state.mask) == state.pattern) {
                return state;
            }
        }
        return UNDEFINED;
    }
}
