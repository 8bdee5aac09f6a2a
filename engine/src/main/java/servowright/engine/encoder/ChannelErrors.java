package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * What two channels that should be cos θ and sin θ can have wrong.
 *
 * <p><b>Formula.</b> x = (1 + g) f(cos θ) + o_x, y = f(sin(θ + δ)) + o_y, with f(v) = v − s v³. <b>Source.</b> Ellipse model of
 * P. L. M. Heydemann, Applied Optics 20 (1981) 3382 (recalled), with a soft saturation added.
 *
 * @param offsetX offset o_x in parts of the amplitude
 * @param offsetY offset o_y
 * @param gain excess g of the x channel
 * @param quadratureRad δ, by how much the y channel leads its place
 * @param saturation s, third-order loss at the peak
 */
public record ChannelErrors(double offsetX, double offsetY, double gain, double quadratureRad, double saturation) {

    public ChannelErrors {
        Require.within("channel offset", 0, 1, Math.hypot(offsetX, offsetY), "");
        Require.within("gain mismatch", -0.9, 9, gain, "");
        Require.within("quadrature error", -1.5, 1.5, quadratureRad, "rad");
        Require.within("saturation", -0.3, 0.3, saturation, "");
    }

    /** The full model over one turn. */
    public FullTurn turn(int angles) {
        return FullTurn.of(
                shaft -> new Planar(
                        (1 + gain) * bent(Math.cos(shaft)) + offsetX, bent(Math.sin(shaft + quadratureRad)) + offsetY),
                angles);
    }

    private double bent(double value) {
        return value - saturation * value * value * value;
    }

    /** First harmonic from the offsets alone, radians: √(o_x² + o_y²). */
    public double firstHarmonicRad() {
        return Math.hypot(offsetX, offsetY);
    }

    /**
     * Second harmonic from gain and quadrature, radians, first order: g/(2 + g) and tan(δ/2), at right angles to each
     * other.
     */
    public double secondHarmonicRad() {
        return Math.hypot(gain / (2 + gain), Math.tan(quadratureRad / 2));
    }

    /** Fourth harmonic from saturation alone, radians, first order: (s/4)/(1 − 3s/4). */
    public double fourthHarmonicRad() {
        return Math.abs(saturation / 4 / (1 - 0.75 * saturation));
    }
}
