package servowright.engine.encoder;

/**
 * One harmonic of an angle error over the turn of the shaft, c cos kθ + s sin kθ, radians at order k of the mechanical
 * angle θ.
 */
public record Ripple(int order, double cosineRad, double sineRad) {

    public double amplitudeRad() {
        return Math.hypot(cosineRad, sineRad);
    }

    public double atRad(double shaftRad) {
        return cosineRad * Math.cos(order * shaftRad) + sineRad * Math.sin(order * shaftRad);
    }
}
