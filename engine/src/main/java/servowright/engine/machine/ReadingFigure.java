package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can stand in one reading of a bench test. */
public enum ReadingFigure implements Key.Named {
    CURRENT(Key.figure("current", "current", q(-1e4, "A"), q(1e4, "A"), "1.002 A")),
    VOLTAGE(Key.figure("voltage", "voltage", q(-1e4, "V"), q(1e4, "V"), "0.2391 V")),
    RESISTANCE(Key.figure("resistance", "resistance shown by a meter", q(1, "uohm"), q(1, "Mohm"), "0.24 ohm")),
    INDUCTANCE(Key.figure("inductance", "inductance shown by a meter", q(1, "nH"), q(100, "H"), "0.31 mH")),
    SPEED(Key.figure("speed", "speed of the shaft", q(0.01, "rpm"), q(500_000, "rpm"), "410 rpm")),
    FREQUENCY(Key.figure("frequency", "electrical frequency", q(0.001, "Hz"), q(100, "kHz"), "68.3 Hz"));

    private final Key key;

    ReadingFigure(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }

    private static Quantity q(double number, String unit) {
        return Quantity.of(number, unit);
    }
}
