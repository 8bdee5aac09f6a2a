package servowright.engine.encoder;

/**
 * A rotation that tips the z axis towards a direction in the plane, about the axis at right angles to both, without a
 * turn about z: the images of the three axes.
 */
record Lean(Vector x, Vector y, Vector z) {

    /** Tips by the length of {@code tilt}, radians, towards its direction. */
    static Lean towards(Planar tilt) {
        double angle = tilt.length();
        double ux = angle > 0 ? tilt.x() / angle : 1;
        double uy = angle > 0 ? tilt.y() / angle : 0;
        double sine = Math.sin(angle);
        double cosine = Math.cos(angle);
        double mixed = (cosine - 1) * ux * uy;
        return new Lean(
                new Vector(cosine * ux * ux + uy * uy, mixed, -sine * ux),
                new Vector(mixed, cosine * uy * uy + ux * ux, -sine * uy),
                new Vector(sine * ux, sine * uy, cosine));
    }

    /** From the tipped axes to the upright ones. */
    Vector upright(Vector v) {
        return new Vector(
                x.x() * v.x() + y.x() * v.y() + z.x() * v.z(),
                x.y() * v.x() + y.y() * v.y() + z.y() * v.z(),
                x.z() * v.x() + y.z() * v.y() + z.z() * v.z());
    }

    /** From the upright axes to the tipped ones. */
    Vector tipped(Vector v) {
        return new Vector(x.dot(v), y.dot(v), z.dot(v));
    }
}
