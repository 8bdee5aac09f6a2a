package servowright.engine.machine;

/** Kinds of angle sensor. */
public enum SensorKind {
    ON_AXIS_MAGNETIC("on-axis magnetic"),
    INCREMENTAL("incremental"),
    INCREMENTAL_WITH_INDEX("incremental with index"),
    HALL_TRIPLE("hall triple"),
    SINE_COSINE("sine/cosine"),
    RESOLVER("resolver"),
    NONE("none");

    private final String words;

    SensorKind(String words) {
        this.words = words;
    }

    /** As it is written. */
    public String words() {
        return words;
    }
}
