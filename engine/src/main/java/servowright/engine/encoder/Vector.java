package servowright.engine.encoder;

/** A vector in space: a place in metres or a field in tesla. */
public record Vector(double x, double y, double z) {

    public static final Vector ZERO = new Vector(0, 0, 0);

    public Vector plus(Vector other) {
        return new Vector(x + other.x, y + other.y, z + other.z);
    }

    public Vector minus(Vector other) {
        return new Vector(x - other.x, y - other.y, z - other.z);
    }

    public Vector times(double factor) {
        return new Vector(factor * x, factor * y, factor * z);
    }

    public double dot(Vector other) {
        return x * other.x + y * other.y + z * other.z;
    }

    public double length() {
        return Math.sqrt(dot(this));
    }

    /** The part across the shaft. */
    public Planar across() {
        return new Planar(x, y);
    }

    /** The same vector turned about z. */
    Vector turned(double cosine, double sine) {
        return new Vector(cosine * x - sine * y, sine * x + cosine * y, z);
    }
}
