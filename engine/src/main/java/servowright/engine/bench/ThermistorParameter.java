package servowright.engine.bench;

/** What the calibration of a thermistor gives. */
public enum ThermistorParameter implements Sought {
    RESISTANCE_AT_25("thermistor at 25 °C", "R25", "kohm"),
    BETA("beta of the thermistor", "β", "K");

    private static final String SETTLE =
            "read the thermistor beside a thermometer, settled at four temperatures or more over the range that counts";

    private final Caption caption;

    ThermistorParameter(String words, String symbol, String unit) {
        this.caption = new Caption(words, symbol, unit, SETTLE);
    }

    @Override
    public Caption caption() {
        return caption;
    }
}
