package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of the supply. */
public enum SupplyFigure implements Key.Named {
    VOLTAGE(Key.figure(
                    "voltage",
                    "voltage from empty to full, or of the mains supply",
                    q(1, "V"),
                    q(1500, "V"),
                    "20.0..29.2 V")
            .overRange()),
    RESISTANCE(Key.figure("resistance", "inner resistance", q(0.01, "mohm"), q(100, "ohm"), "45 mohm")),
    CURRENT(Key.figure("current", "current it gives", q(1, "mA"), q(10_000, "A"), "20 A")),
    TAKES_BACK(Key.figure("takes_back", "current it takes back when axes brake", q(0, "A"), q(10_000, "A"), "10 A")),
    CAPACITY(Key.figure("capacity", "charge it holds", q(0.001, "A h"), q(10_000, "A h"), "20 A h")),
    FUSE(Key.figure("fuse", "rated current of its fuse", q(1, "mA"), q(10_000, "A"), "30 A")),
    CAPACITANCE(Key.figure("capacitance", "capacitance across it", q(0.1, "uF"), q(10, "F"), "2.2 mF"));

    private final Key key;

    SupplyFigure(Key key) {
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
