package servowright.engine.bench;

import java.util.List;

/** What a test of current sensing gives; it belongs to the drive that measured. */
public enum SensingParameter implements Sought {
    OFFSET_A("offset of current sensor A", "oA", "mA"),
    OFFSET_B("offset of current sensor B", "oB", "mA"),
    OFFSET_C("offset of current sensor C", "oC", "mA"),
    GAIN_B("gain of current sensor B over A", "gB", ""),
    GAIN_C("gain of current sensor C over A", "gC", "");

    private static final String SETTLE = "record the phase currents with the bridge off, and while the motor turns";

    private final Caption caption;

    SensingParameter(String words, String symbol, String unit) {
        this.caption = new Caption(words, symbol, unit, SETTLE);
    }

    /** Offset of the sensor of a phase, 0 to 2. */
    static SensingParameter offset(int phase) {
        return List.of(OFFSET_A, OFFSET_B, OFFSET_C).get(phase);
    }

    /** Gain over the sensor of A, of phase 1 or 2. */
    static SensingParameter gain(int phase) {
        return List.of(GAIN_B, GAIN_C).get(phase - 1);
    }

    @Override
    public Caption caption() {
        return caption;
    }
}
