package servowright.engine.machine;

/** Kinds of bench test. */
public enum TestKind {
    /** Driven by another machine with the terminals open: back-EMF. */
    SPIN("spin"),
    /** Direct current through the winding: resistance. */
    RESISTANCE("resistance"),
    /** Voltage step on the locked rotor: inductance. */
    INDUCTANCE_STEP("inductance step"),
    /** Brought to speed and left to itself: drag, and inertia by an added one. */
    COAST_DOWN("coast-down"),
    /** Turned by its drive without load at several speeds: drag. */
    NO_LOAD("no-load run"),
    /** Held at several currents while the torque is read: torque constant. */
    TORQUE_STAIRS("torque stairs"),
    /** Turned from outside with the terminals joined: inductance and braking torque. */
    SHORT_CIRCUIT("short circuit"),
    /** A free shaft driven by a changing current: inertia, or torque constant. */
    ACCELERATION("acceleration"),
    /** Turned slowly all around, forward and back: cogging and dry drag. */
    COGGING_RUN("cogging run"),
    /** Held at many angles all around, forward and back: cogging. */
    HOLD_MAP("hold map"),
    /** Current sensors read with the bridge off: their zero. */
    CURRENT_ZERO("current zero"),
    /** Phase currents recorded while the motor turns: offsets, gains, sum, and switches that do not work. */
    CURRENT_SENSING("current sensing"),
    /** What a drive logs while its axis moves: resistance, back-EMF, inertia, drag. */
    AXIS_LOG("axis log"),
    /** A sine of one frequency in, what comes out held against it; several make a frequency response. */
    SINE_RESPONSE("sine response"),
    /** Any excitation with what comes out: gain, time constant and delay. */
    RESPONSE_RUN("response run"),
    /** Loaded from free to standing still at one voltage: torque constant, and whether the current is the motor's at all. */
    LOAD_CURVE("load curve"),
    /** One event as several recorders saw it: how far their clocks are apart. */
    SHARED_EVENT("shared event"),
    /** A thermistor beside a thermometer: its constants, and what declared ones are worth. */
    THERMISTOR_CHECK("thermistor check"),
    /** Loaded until warm, then the winding read while it cools: thermal resistance. */
    HEATING("heating"),
    /** The shaft turned once by hand, the angle sensor read: is it fit to be calibrated at all? */
    HAND_TURN("hand turn", true),
    /** The rotor pulled to a standing field at several electrical angles, from both sides: commutation offset. */
    ALIGNMENT("alignment", true),
    /** The rotor dragged by a slowly turning field, forwards and back: offset, friction and angle error. */
    SLOW_DRAG("slow drag", true),
    /** The shaft on its own, coasting down or at constant speed: angle error without a reference. */
    FREE_RUN("free run", true),
    /** The sensor against another one that is trusted: angle error, delay and play. */
    REFERENCE_RUN("reference run", true),
    /** The offset that served best at several speeds: true offset and delay. */
    OFFSET_AT_SPEEDS("offset at speeds", true),
    /** Magnitude of the field at several shims: slope and bend of the field with the gap. */
    SHIM_SERIES("shim series", true),
    /** Both raw channels of a sine-cosine sensor over a turn: offsets, gains and the angle between them. */
    CHANNEL_TURN("channel turn", true),
    /** The offset found after taking the mount apart and together. */
    RESEATING("reseating", true);

    private final String words;
    private final boolean ofAxis;

    TestKind(String words) {
        this(words, false);
    }

    TestKind(String words, boolean ofAxis) {
        this.words = words;
        this.ofAxis = ofAxis;
    }

    /** Whether it looks at the angle sensor of an axis, and names the axis rather than a motor. */
    public boolean ofAxis() {
        return ofAxis;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
