package servowright.engine.encoder;

import java.util.Optional;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Require;

/**
 * The ellipse that two channels draw, and what takes it back to a circle: two offsets, a ratio of gains and an angle.
 *
 * <p><b>Formula.</b> Least squares of a x² + b x y + c y² + d x + e y = 1 in coordinates brought to the middle and size of the
 * points; then x = x0 + A cos θ, y = y0 + B sin(θ + δ). <b>Validity.</b> Points over more than half of the turn; the algebraic
 * distance favours small ellipses where noise is large. <b>Source.</b> P. L. M. Heydemann, Applied Optics 20 (1981) 3382
 * (recalled).
 *
 * @param centreX x0
 * @param centreY y0
 * @param amplitudeX A
 * @param amplitudeY B
 * @param quadratureRad δ, by how much y leads its place
 * @param semiMajor longer half axis
 * @param semiMinor shorter half axis
 * @param tiltRad direction of the longer axis, −π/2 to π/2
 */
public record EllipseFit(
        double centreX,
        double centreY,
        double amplitudeX,
        double amplitudeY,
        double quadratureRad,
        double semiMajor,
        double semiMinor,
        double tiltRad) {

    private static final int FEWEST = 6;

    /** Empty if the points draw no ellipse. */
    public static Optional<EllipseFit> of(double[] x, double[] y) {
        Require.atLeast("number of points", FEWEST, x.length);
        double midX = middle(x);
        double midY = middle(y);
        double size = Math.max(reach(x, midX), reach(y, midY));
        double[][] columns = new double[5][x.length];
        double[] ones = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double u = (x[i] - midX) / size;
            double v = (y[i] - midY) / size;
            columns[0][i] = u * u;
            columns[1][i] = u * v;
            columns[2][i] = v * v;
            columns[3][i] = u;
            columns[4][i] = v;
            ones[i] = 1;
        }
        LinearFit fit = LinearFit.of(Design.ofColumns(columns), ones);
        return fit.status().converged() ? ellipse(fit, midX, midY, size) : Optional.empty();
    }

    private static Optional<EllipseFit> ellipse(LinearFit fit, double midX, double midY, double size) {
        double a = fit.parameter(0);
        double b = fit.parameter(1);
        double c = fit.parameter(2);
        double d = fit.parameter(3);
        double e = fit.parameter(4);
        double det = 4 * a * c - b * b;
        if (!(det > 0 && a > 0)) {
            return Optional.empty();
        }
        double u0 = (b * e - 2 * c * d) / det;
        double v0 = (b * d - 2 * a * e) / det;
        // Value of the quadratic form on the ellipse about its centre.
        double level = 1 - (d * u0 + e * v0) / 2;
        double amplitudeX = size * Math.sqrt(4 * level * c / det);
        double amplitudeY = size * Math.sqrt(4 * level * a / det);
        double sine = -b / (2 * Math.sqrt(a * c));
        double mean = (a + c) / 2;
        double half = Math.hypot(a - c, b) / 2;
        return Optional.of(new EllipseFit(
                midX + size * u0,
                midY + size * v0,
                amplitudeX,
                amplitudeY,
                Math.asin(sine),
                size * Math.sqrt(level / (mean - half)),
                size * Math.sqrt(level / (mean + half)),
                0.5 * Math.atan2(-b, c - a)));
    }

    /**
     * The ellipse of two channels.
     *
     * @param amplitudeX   A, above 0
     * @param amplitudeY   B, above 0
     * @param quadratureRad δ, less than a right angle
     */
    static EllipseFit ofChannels(
            double centreX, double centreY, double amplitudeX, double amplitudeY, double quadratureRad) {
        double mean = (amplitudeX * amplitudeX + amplitudeY * amplitudeY) / 2;
        double across = amplitudeX * amplitudeY * Math.sin(quadratureRad);
        double half = Math.hypot((amplitudeX * amplitudeX - amplitudeY * amplitudeY) / 2, across);
        return new EllipseFit(
                centreX,
                centreY,
                amplitudeX,
                amplitudeY,
                quadratureRad,
                Math.sqrt(mean + half),
                Math.sqrt(Math.max(0, mean - half)),
                0.5 * Math.atan2(2 * across, amplitudeX * amplitudeX - amplitudeY * amplitudeY));
    }

    private static double middle(double[] values) {
        double sum = 0;
        for (double value : values) {
            sum += Require.finite("point", value, "");
        }
        return sum / values.length;
    }

    private static double reach(double[] values, double middle) {
        double reach = Double.MIN_NORMAL;
        for (double value : values) {
            reach = Math.max(reach, Math.abs(value - middle));
        }
        return reach;
    }

    /** The angle of a pair of readings, with the ellipse taken back to a circle. */
    public double angleRad(double x, double y) {
        double cosine = (x - centreX) / amplitudeX;
        double leading = (y - centreY) / amplitudeY;
        double sine = (leading - cosine * Math.sin(quadratureRad)) / Math.cos(quadratureRad);
        return Math.atan2(sine, cosine);
    }

    /** What the channels have wrong, to see the error that the ellipse causes when nothing is done. */
    public ChannelErrors channelErrors() {
        double scale = amplitudeY;
        return new ChannelErrors(centreX / scale, centreY / scale, amplitudeX / amplitudeY - 1, quadratureRad, 0);
    }
}
