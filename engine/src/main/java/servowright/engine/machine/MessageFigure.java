package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of a message on the bus. */
public enum MessageFigure implements Key.Named {
    BYTES(Key.count("bytes", "data it carries", 0, 64, "8")),
    PERIOD(Key.figure("period", "shortest time between two of them", q(0.05, "ms"), q(3600, "s"), "20 ms")),
    DEADLINE(Key.figure(
            "deadline", "latest arrival after its event; without it the period", q(0.05, "ms"), q(3600, "s"), "10 ms")),
    JITTER(Key.figure("jitter", "how much later than its event it may be queued", q(0, "ms"), q(3600, "s"), "0.5 ms"));

    private final Key key;

    MessageFigure(Key key) {
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
