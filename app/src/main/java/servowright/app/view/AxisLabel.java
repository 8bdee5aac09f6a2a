package servowright.app.view;

import java.util.Map;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Units;

/** Label of an axis from the unit it is shown in: {@code time in ms}. */
final class AxisLabel {
    private static final Map<Dimension, String> WORDS = Map.ofEntries(
            Map.entry(Dimension.TIME, "time"),
            Map.entry(Dimension.VOLTAGE, "voltage"),
            Map.entry(Dimension.CURRENT, "current"),
            Map.entry(Dimension.RESISTANCE, "resistance"),
            Map.entry(Dimension.INDUCTANCE, "inductance"),
            Map.entry(Dimension.FLUX_LINKAGE, "flux linkage"),
            Map.entry(Dimension.EMF_CONSTANT, "back-EMF constant"),
            Map.entry(Dimension.SPEED_CONSTANT, "speed per volt"),
            Map.entry(Dimension.ANGLE, "angle"),
            Map.entry(Dimension.SPEED, "speed"),
            Map.entry(Dimension.FREQUENCY, "frequency"),
            Map.entry(Dimension.TORQUE, "torque"),
            Map.entry(Dimension.POWER, "power"),
            Map.entry(Dimension.TEMPERATURE, "temperature"));

    private AxisLabel() {}

    static String of(String unit) {
        String word = WORDS.getOrDefault(Units.named(unit).dimension(), "");
        if (unit.isEmpty()) {
            return "as recorded";
        }
        if (unit.equals("1")) {
            return "ratio";
        }
        return word.isEmpty() ? unit : word + " in " + unit;
    }
}
