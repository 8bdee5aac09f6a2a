package servowright.engine.machine;

import static servowright.engine.machine.Key.Qualifier.CURRENT_BASIS;

import servowright.engine.quantity.Quantity;

/** What can be declared of a drive: bridge and controller. */
public enum DriveFigure implements Key.Named {
    VOLTAGE(Key.figure("voltage", "supply voltage it takes", q(1, "V"), q(1500, "V"), "12..34 V")
            .overRange()),
    TRIP_VOLTAGE(
            Key.figure("trip_voltage", "supply voltage at which it switches off", q(1, "V"), q(2000, "V"), "36 V")),
    CONTINUOUS_CURRENT(Key.figure(
                    "current.continuous", "motor current it gives for good", q(1, "mA"), q(10_000, "A"), "6 A [q axis]")
            .stating(CURRENT_BASIS)),
    PEAK_CURRENT(
            Key.figure("current.peak", "motor current it gives briefly", q(1, "mA"), q(10_000, "A"), "12 A [q axis]")
                    .stating(CURRENT_BASIS)),
    POWER(Key.figure("power", "power it takes from the supply for good", q(0.1, "W"), q(1, "MW"), "150 W")),
    ELECTRICAL_FREQUENCY(Key.figure(
            "electrical_frequency", "highest electrical frequency it commutates", q(1, "Hz"), q(20, "kHz"), "950 Hz")),
    LOOP_RATE(Key.figure("loop_rate", "current loop steps per second", q(100, "Hz"), q(1000, "kHz"), "10 kHz")),
    PWM(Key.figure("pwm", "switching frequency of the bridge", q(1, "kHz"), q(1000, "kHz"), "20 kHz")),
    DEAD_TIME(Key.figure("dead_time", "time both switches of a leg are off", q(1, "ns"), q(20, "us"), "300 ns")),
    RESERVE(Key.figure(
            "reserve", "share of the voltage kept for control", Quantity.number(0), Quantity.number(0.5), "10 %"));

    private final Key key;

    DriveFigure(Key key) {
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
