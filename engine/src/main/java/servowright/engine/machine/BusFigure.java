package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of the bus. */
public enum BusFigure implements Key.Named {
    RATE(Key.figure("rate", "bit rate", Quantity.of(5, "kbit/s"), Quantity.of(20, "Mbit/s"), "1 Mbit/s")),
    CABLE(Key.figure("cable", "length of the trunk", Quantity.of(0.01, "m"), Quantity.of(10_000, "m"), "3.2 m"));

    private final Key key;

    BusFigure(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }
}
