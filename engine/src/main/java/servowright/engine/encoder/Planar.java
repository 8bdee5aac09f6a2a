package servowright.engine.encoder;

/**
 * A vector in the plane across the shaft, handled as the complex number x + iy: an offset in metres, a tilt in radians
 * towards its direction, or the two channels of a sensor.
 */
public record Planar(double x, double y) {

    public static final Planar ZERO = new Planar(0, 0);

    /** The vector of given length in the given direction, radians from x. */
    public static Planar along(double length, double directionRad) {
        return new Planar(length * Math.cos(directionRad), length * Math.sin(directionRad));
    }

    public Planar plus(Planar other) {
        return new Planar(x + other.x, y + other.y);
    }

    public Planar minus(Planar other) {
        return new Planar(x - other.x, y - other.y);
    }

    public Planar times(double factor) {
        return new Planar(factor * x, factor * y);
    }

    /** Product as complex numbers: lengths multiply, directions add. */
    public Planar times(Planar other) {
        return new Planar(x * other.x - y * other.y, x * other.y + y * other.x);
    }

    /** The same length on the other side of x. */
    public Planar mirrored() {
        return new Planar(x, -y);
    }

    public double length() {
        return Math.hypot(x, y);
    }

    /** Radians from x, from -pi to pi. */
    public double directionRad() {
        return Math.atan2(y, x);
    }
}
