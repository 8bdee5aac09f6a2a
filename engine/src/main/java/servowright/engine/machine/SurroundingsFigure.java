package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of the place the machine works in. */
public enum SurroundingsFigure implements Key.Named {
    COLDEST(Key.figure(
            "coldest", "lowest air temperature", Quantity.of(-80, "degC"), Quantity.of(200, "degC"), "-12 degC")),
    WARMEST(Key.figure(
            "warmest", "highest air temperature", Quantity.of(-80, "degC"), Quantity.of(200, "degC"), "30 degC"));

    private final Key key;

    SurroundingsFigure(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }
}
