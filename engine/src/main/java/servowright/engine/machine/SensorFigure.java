package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of an angle sensor. */
public enum SensorFigure implements Key.Named {
    RESOLUTION(Key.figure("resolution", "bits per turn", Quantity.of(2, "bit"), Quantity.of(32, "bit"), "14 bit")),
    FIELD(Key.figure("field", "magnetic field it works in", q(0.1, "mT"), q(1000, "mT"), "25..90 mT")
            .overRange()),
    DEPTH(Key.figure("depth", "sensing element below the surface of the package", q(0, "mm"), q(5, "mm"), "0.35 mm")),
    DELAY(Key.figure("delay", "time from angle to number", q(0, "us"), q(100, "ms"), "40 us")),
    LINE_LENGTH(Key.figure("line.length", "cable from the sensor to the drive", q(0, "m"), q(500, "m"), "0.8 m")),
    LINE_CLOCK(Key.figure("line.clock", "clock of a serial line", q(1, "kHz"), q(100, "MHz"), "1 MHz")),
    LINE_EDGE_RATE(Key.figure(
            "line.edge_rate",
            "edges a second that the input of the drive counts",
            q(1, "kHz"),
            q(1000, "MHz"),
            "1 MHz"));

    private final Key key;

    SensorFigure(Key key) {
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
