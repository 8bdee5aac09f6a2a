package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of the bus. */
public enum BusFigure implements Key.Named {
    RATE(Key.figure("rate", "bit rate", q(5, "kbit/s"), q(1, "Mbit/s"), "1 Mbit/s")),
    DATA_RATE(Key.figure(
            "data_rate", "bit rate of the data, with FD frames", q(5, "kbit/s"), q(20, "Mbit/s"), "5 Mbit/s")),
    CABLE(Key.figure("cable", "length of the trunk", q(0.01, "m"), q(10_000, "m"), "3.2 m")),
    CROSS_SECTION(Key.figure("cross_section", "copper of one wire", q(0.01, "mm2"), q(10, "mm2"), "0.34 mm2")),
    STUB(Key.figure("stub", "longest branch from the trunk to a node", q(0, "m"), q(1000, "m"), "0.2 m")),
    STUBS(Key.figure("stubs", "all branches together", q(0, "m"), q(10_000, "m"), "0.9 m")),
    TERMINATORS(Key.count("terminators", "terminators of 120 ohm that are on", 0, 100, "2")),
    GROUND_SHIFT(Key.figure(
            "ground_shift", "largest voltage between the grounds of two nodes", q(0, "V"), q(60, "V"), "0.3 V")),
    COMMAND_BYTES(Key.count("command.bytes", "data of a command to each axis", 0, 64, "8")),
    COMMAND_PERIOD(Key.figure("command.period", "time between two of them", q(0.05, "ms"), q(60, "s"), "5 ms")),
    FEEDBACK_BYTES(Key.count("feedback.bytes", "data that each axis sends back", 0, 64, "8")),
    FEEDBACK_PERIOD(Key.figure("feedback.period", "time between two of them", q(0.05, "ms"), q(60, "s"), "5 ms")),
    SERVICE_BYTES(Key.count("service.bytes", "data of a service request and its answer", 0, 64, "8")),
    SERVICE_PERIOD(Key.figure(
            "service.period", "shortest time between two requests of the host", q(0.05, "ms"), q(3600, "s"), "50 ms")),
    SYNC(Key.figure("sync", "time between two synchronisation messages", q(0.05, "ms"), q(60, "s"), "5 ms")),
    HEARTBEAT(Key.figure("heartbeat", "time between two heartbeats of an axis", q(1, "ms"), q(65.5, "s"), "100 ms")),
    HOST_JITTER(Key.figure(
            "host_jitter", "how much later than planned the host queues a message", q(0, "ms"), q(1, "s"), "0.2 ms")),
    WATCHDOG(Key.figure(
            "watchdog", "time without a command after which an axis stops", q(0.1, "ms"), q(600, "s"), "25 ms")),
    RESTART(Key.figure(
            "restart",
            "wait of a node that had to leave the bus before it comes back",
            q(0, "ms"),
            q(600, "s"),
            "100 ms"));

    private final Key key;

    BusFigure(Key key) {
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
