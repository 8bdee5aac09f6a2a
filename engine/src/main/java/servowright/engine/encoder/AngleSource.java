package servowright.engine.encoder;

/** Ways to know the angle of a rotor, by what they can and cannot tell. */
public enum AngleSource {
    /** Magnet on the shaft, field read before its face: the angle within one turn, from the start. */
    ON_AXIS_MAGNETIC,
    /** Two square waves: changes of the angle only. */
    INCREMENTAL,
    /** The same with one mark per turn: the angle, once the mark has passed. */
    INCREMENTAL_WITH_INDEX,
    /** Three switches: which sixth of an electrical turn, from the start. */
    HALL_TRIPLE,
    /** Two analogue waves, one period per turn or per electrical turn: the angle within it, from the start. */
    SINE_COSINE,
    /** Wound sensor with a carrier: the angle within a turn, from the start. */
    RESOLVER,
    /** Angle worked out from voltage and current of the running motor. */
    NONE;

    /** Whether the electrical angle is known without motion to better than a few degrees. */
    boolean knowsAtStart() {
        return this == ON_AXIS_MAGNETIC || this == SINE_COSINE || this == RESOLVER;
    }

    /** Whether the angle within one mechanical turn is known without motion. */
    boolean knowsWithinTurn() {
        return this == ON_AXIS_MAGNETIC || this == RESOLVER;
    }
}
