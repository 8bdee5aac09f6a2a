package servowright.app.input.form;

import servowright.engine.machine.Key;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** The range of a key as a person would write it. */
public final class KeyRange {
    private KeyRange() {}

    /** {@code 0.1 mm to 10 mm}. */
    public static String words(Key key) {
        Unit usual = usualUnit(key);
        return Magnitude.text(key.least(), usual) + " to " + Magnitude.text(key.most(), usual);
    }

    /** The unit its example is written in. */
    static Unit usualUnit(Key key) {
        return QuantityText.parse(key.example()) instanceof Stated s ? s.unit() : Units.named("");
    }
}
