package servowright.engine.machine;

import servowright.engine.quantity.Quantity;

/** What can be declared of an axis itself: its mount, gear and load. */
public enum AxisFigure implements Key.Named {
    NODE(Key.count("node", "its number on the bus; without it the order of the axes counts", 1, 127, "1")),
    MAGNET_DIAMETER(
            Key.figure("mount.magnet.diameter", "diameter of the sensor magnet", q(1, "mm"), q(100, "mm"), "8 mm")),
    MAGNET_LENGTH(
            Key.figure("mount.magnet.length", "thickness of the sensor magnet", q(0.5, "mm"), q(50, "mm"), "3 mm")),
    MAGNET_REMANENCE(
            Key.figure("mount.magnet.remanence", "remanence of the sensor magnet", q(0.1, "T"), q(1.6, "T"), "1.20 T")),
    GAP(Key.figure(
            "mount.gap",
            "magnet face to the surface of the sensor package",
            q(0.1, "mm"),
            q(10, "mm"),
            "1.9 mm ± 0.2 mm")),
    SENSOR_OFFSET(
            Key.figure("mount.sensor_offset", "sensor beside the axis of rotation", q(0, "mm"), q(5, "mm"), "0.2 mm")),
    HOLE_DIAMETER(
            Key.figure("mount.holes.diameter", "screw holes of the sensor board", q(0.5, "mm"), q(20, "mm"), "2.2 mm")),
    HOLE_COUNT(Key.count("mount.holes.count", "screw holes evenly on a circle", 2, 24, "4")),
    HOLE_CIRCLE(Key.figure(
            "mount.holes.circle",
            "circle that the screw holes lie on, its diameter",
            q(3, "mm"),
            q(500, "mm"),
            "16 mm")),
    HOLE_FROM(Key.figure(
            "mount.holes.from",
            "angle of the first hole from the right, seen from the board",
            q(-360, "deg"),
            q(360, "deg"),
            "45 deg")),
    HOLE_WIDTH(Key.figure(
            "mount.holes.width", "four screw holes on a rectangle, its width", q(3, "mm"), q(500, "mm"), "20 mm")),
    HOLE_HEIGHT(Key.figure("mount.holes.height", "height of that rectangle", q(3, "mm"), q(500, "mm"), "14 mm")),
    BORE(Key.figure("mount.bore", "opening for shaft and magnet", q(0, "mm"), q(200, "mm"), "9 mm")),
    MOTOR_TURNS(Key.figure(
            "gear.motor_turns", "motor turns per output turn", Quantity.number(0.001), Quantity.number(10_000), "9")),
    GEAR_EFFICIENCY(Key.figure(
            "gear.efficiency",
            "share of the power that comes through",
            Quantity.number(0.05),
            Quantity.number(1),
            "0.85")),
    GEAR_INERTIA(Key.figure(
            "gear.inertia", "inertia of the gear at the motor", q(0, "kg m2"), q(1000, "kg m2"), "0.2 kg cm2")),
    LOAD_INERTIA(Key.figure(
            "load.inertia", "inertia of the load at the output", q(0, "kg m2"), q(1e6, "kg m2"), "0.042 kg m2")),
    LOAD_FRICTION(Key.figure(
            "load.friction", "friction that does not depend on speed", q(0, "N m"), q(1e6, "N m"), "0.35 N m")),
    LOAD_VISCOUS(Key.figure(
            "load.viscous", "friction that grows with speed", q(0, "N m s/rad"), q(1e6, "N m s/rad"), "2 mN m s/rad")),
    LOAD_TORQUE(Key.figure(
            "load.torque",
            "steady torque of the load, weight above all; positive pulls it back",
            q(-1e6, "N m"),
            q(1e6, "N m"),
            "1.5 N m"));

    private final Key key;

    AxisFigure(Key key) {
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
