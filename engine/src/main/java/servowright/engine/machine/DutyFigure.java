package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of a duty: one thing an axis must do over time, at its output. */
public enum DutyFigure implements Key.Named {
    TRAVEL(Key.figure("travel", "angle of one move", q(0.001, "deg"), q(1e6, "turns"), "12 turns")),
    SPEED(Key.figure("speed", "speed to reach", q(0.0001, "rpm"), q(500_000, "rpm"), "95 rpm")),
    ACCELERATION(Key.figure(
            "acceleration", "acceleration and deceleration", q(0.0001, "rad/s2"), q(1e7, "rad/s2"), "3 turns/s2")),
    TIME(Key.figure("time", "time the speed or torque is held", q(1, "ms"), q(1000, "h"), "4 s")),
    REST(Key.figure("rest", "standstill after the move", q(0, "s"), q(1000, "h"), "2 s")),
    TORQUE(Key.figure("torque", "further torque during the duty", q(-1e6, "N m"), q(1e6, "N m"), "0.4 N m"));

    private final Key key;

    DutyFigure(Key key) {
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
