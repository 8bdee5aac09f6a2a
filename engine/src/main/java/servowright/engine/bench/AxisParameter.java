package servowright.engine.bench;

/** What the bench can tell of the angle sensor of an axis, each on one fixed basis. */
public enum AxisParameter implements Sought {
    /** Turns of the reading for one turn of the shaft; 1 when all is well. */
    TURNS_READ("turns read per turn", "n", "", "turn the shaft once by hand and record what the sensor reads"),
    /** Mean over one turn, as the sensor tells it. */
    SENSOR_FIELD(
            "field at the sensor", "B", "mT", "turn the shaft once by hand and record the magnitude in millitesla"),
    /** Electrical: s p θ_read − θ_e, s the direction in which the sensor counts. */
    COMMUTATION_OFFSET(
            "commutation offset",
            "θ0",
            "deg",
            "an alignment at several electrical angles from both sides, or a slow drag both ways"),
    /** Electrical: how far friction holds the rotor from the field. */
    FRICTION_LAG("angle held back by friction", "δ", "deg", "an alignment from both sides, or a slow drag both ways"),
    /** Mechanical, about the mean, before any correction. */
    ANGLE_ERROR("largest angle error over a turn", "ε", "deg", "a slow drag both ways, or a free run"),
    /** Of the reading alone. */
    ANGLE_DELAY("delay of the angle", "ts", "us", "a run beside a sensor that is trusted, at a known speed"),
    /** Of all that lies between an angle and the voltage that uses it, as far as the drive does not make up for it. */
    COMMUTATION_DELAY("delay from angle to voltage", "τ", "us", "the best offset at two speeds, forwards and back"),
    /** Relative, at the middle of the shims. */
    FIELD_SLOPE("change of the field with the gap", "β", "1/mm", "the magnitude of the field at three shims"),
    /** −B''/(8B): what an offset of the sensor costs. */
    FIELD_BEND("bend of the field with the gap", "κ", "1/mm2", "the magnitude of the field at three shims"),
    /** Of the centre of both raw channels, in parts of their amplitudes. */
    CHANNEL_OFFSET("offset of the channels", "o", "%", AxisParameter.RAW),
    /** By how much the cosine is larger than the sine. */
    CHANNEL_GAIN("gain mismatch of the channels", "g", "%", AxisParameter.RAW),
    /** By how much the sine leads its place a quarter turn behind the cosine. */
    CHANNEL_QUADRATURE("quadrature error", "δ", "deg", AxisParameter.RAW),
    /** Electrical, largest distance from the mean. */
    RESEATING_SPREAD(
            "spread of the offset over seatings",
            "Δ",
            "deg",
            "the offset found again after taking the mount apart and together");

    private static final String RAW = "turn the shaft once and record both raw channels of the sensor";

    private final Caption caption;

    AxisParameter(String words, String symbol, String unit, String settle) {
        this.caption = new Caption(words, symbol, unit, settle);
    }

    @Override
    public Caption caption() {
        return caption;
    }
}
