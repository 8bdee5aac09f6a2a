package servowright.engine.machine;

import static servowright.engine.machine.Key.Qualifier.CURRENT_BASIS;
import static servowright.engine.machine.Key.Qualifier.METER;

import servowright.engine.quantity.Quantity;

/** What can stand in one reading of a bench test. */
public enum ReadingFigure implements Key.Named {
    CURRENT(Key.figure("current", "current", q(-1e4, "A"), q(1e4, "A"), "1.002 A")
            .stating(CURRENT_BASIS)),
    VOLTAGE(Key.figure("voltage", "voltage", q(-1e4, "V"), q(1e4, "V"), "0.2391 V")
            .stating(METER)),
    RESISTANCE(Key.figure("resistance", "resistance shown by a meter", q(1, "uohm"), q(1, "Mohm"), "0.24 ohm")),
    INDUCTANCE(Key.figure("inductance", "inductance shown by a meter", q(1, "nH"), q(100, "H"), "0.31 mH")),
    SPEED(Key.figure(
            "speed", "speed of the shaft, below 0 backwards", q(-500_000, "rpm"), q(500_000, "rpm"), "410 rpm")),
    FREQUENCY(Key.figure("frequency", "electrical frequency", q(0.001, "Hz"), q(100, "kHz"), "68.3 Hz")),
    FIELD_ANGLE(Key.figure(
            "field_angle",
            "electrical angle of the standing field, whole turns counted",
            q(-1e5, "deg"),
            q(1e5, "deg"),
            "90 deg")),
    ANGLE(Key.figure("angle", "angle the sensor shows", q(-1e5, "deg"), q(1e5, "deg"), "51.2 deg")),
    OFFSET(Key.figure("offset", "electrical offset found", q(-360, "deg"), q(360, "deg"), "36.4 deg")),
    SHIM(Key.figure("shim", "thickness of all shims under the sensor", q(0, "mm"), q(20, "mm"), "0.5 mm")),
    FIELD(Key.figure("field", "magnetic field the sensor shows", q(0.1, "mT"), q(1000, "mT"), "62 mT")),
    MAGNITUDE(Key.figure(
            "magnitude",
            "field the sensor shows, in its own counts",
            Quantity.number(1),
            Quantity.number(1e9),
            "2410")),
    TEMPERATURE(Key.figure(
            "temperature", "temperature that a thermometer shows", q(-80, "degC"), q(300, "degC"), "40.5 degC")),
    AFTER(Key.figure("after", "time after switching off", q(0, "s"), q(10, "h"), "20 s")),
    SINCE(Key.figure("since", "time since the current was switched on", q(0, "s"), q(100, "h"), "5 min")),
    TORQUE(Key.figure("torque", "torque of the shaft", q(-1e5, "N m"), q(1e5, "N m"), "0.41 N m")),
    FORCE(Key.figure("force", "force on the scale at the lever", q(-1e6, "N"), q(1e6, "N"), "312 gf"));

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
