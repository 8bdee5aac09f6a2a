package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of a bus controller: how it cuts a bit. */
public enum ControllerFigure implements Key.Named {
    CLOCK(Key.figure("clock", "clock of the controller", Quantity.of(0.1, "MHz"), Quantity.of(1000, "MHz"), "80 MHz")),
    DEVIATION(Key.figure(
            "deviation", "how far its clock may be off", Quantity.of(0, "ppm"), Quantity.of(5, "%"), "50 ppm")),
    PRESCALER(Key.count("prescaler", "clock periods in a quantum", 1, 1024, "10")),
    PROP(Key.count("prop", "quanta of the propagation segment", 0, 512, "5")),
    PHASE_ONE(Key.count("phase_one", "quanta of phase segment 1", 1, 512, "1")),
    PHASE_TWO(Key.count("phase_two", "quanta of phase segment 2", 1, 256, "1")),
    JUMP(Key.count("jump", "synchronisation jump width, quanta", 1, 256, "1"));

    private final Key key;

    ControllerFigure(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }
}
