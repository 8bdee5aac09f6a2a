package servowright.engine.encoder;

import java.util.Arrays;
import java.util.Optional;
import java.util.function.UnaryOperator;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.Derivative;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.NonlinearFit;
import servowright.engine.numeric.NonlinearModel;

/**
 * Two channels that should be cos θ and sin θ, read over a turn: the ellipse they draw, with the uncertainty that their scatter
 * gives it.
 *
 * <p><b>Formula.</b> {@link EllipseFit} first; from there least squares of ρ = 1, ρ the radius of each point after the ellipse
 * was taken back to a circle, so that points count by their distance and small ellipses are not favoured. The covariance leaves out
 * one sixteenth of the points after the other, on the tangent of the model: it sees neighbours that depend on each other, and a
 * channel noisier than the other. <b>Valid for</b> scatter small against the amplitude, points that leave no quarter of
 * the turn empty. <b>Source.</b> Model of P. L. M. Heydemann, Applied Optics 20 (1981) 3382 (recalled); least squares.
 *
 * @param ellipse    that was found
 * @param covariance of x0, y0, A, B, δ
 * @param freedom    degrees of freedom of it
 * @param angleRad   angle of every point
 * @param radius     ρ of every point
 */
@SuppressWarnings("ArrayRecordComponent") // read, never written to
public record ChannelTurn(
        EllipseFit ellipse, Covariance covariance, double freedom, double[] angleRad, double[] radius) {
    /** The widest part of a turn without a point. */
    private static final double WIDEST_GAP_RAD = Math.PI / 2;

    /** Points scattered by more than this share of the amplitude draw no ellipse. */
    private static final double MOST_SCATTER = 0.2;

    private static final int STRETCHES = 16;

    private static final int ANGLES = 720;

    /** All unknowns are near 1 and smooth. */
    private static final double STEP = 1e-4;

    /** Why there is none. */
    public enum Refusal {
        NO_ELLIPSE,
        NO_WHOLE_TURN
    }

    /** The fit, or why there is none. */
    public record Result(Optional<ChannelTurn> turn, Optional<Refusal> refusal) {
        static Result refused(Refusal why) {
            return new Result(Optional.empty(), Optional.of(why));
        }
    }

    /** Fits points in the order in which they were read; at least 32. */
    public static Result of(double[] x, double[] y) {
        Optional<EllipseFit> start = EllipseFit.of(x, y);
        if (start.isEmpty()) {
            return Result.refused(Refusal.NO_ELLIPSE);
        }
        EllipseFit s = start.get();
        double[] ones = new double[x.length];
        Arrays.fill(ones, 1);
        // Counted from the start and in amplitudes, so that no unknown stands at zero.
        UnaryOperator<double[]> radii = p -> radii(moved(s, p), x, y);
        NonlinearModel model = NonlinearModel.withDerivatives(radii, at -> Derivative.central(radii, at, STEP));
        NonlinearFit fit = NonlinearFit.of(model, ones, 1, 1, 1, 1, 1);
        if (!fit.status().converged() || !(fit.residualSd() < MOST_SCATTER)) {
            return Result.refused(Refusal.NO_ELLIPSE);
        }
        EllipseFit found = moved(s, fit.parameters().toArray());
        double[] angle = new double[x.length];
        Arrays.setAll(angle, i -> found.angleRad(x[i], y[i]));
        if (widestGap(angle) > WIDEST_GAP_RAD) {
            return Result.refused(Refusal.NO_WHOLE_TURN);
        }
        double[][] tangent = model.derivatives(fit.parameters().toArray());
        Optional<BlockJackknife> scatter =
                BlockJackknife.of(Design.ofColumns(tangent), fit.residuals().toArray(), STRETCHES);
        return scatter.map(b -> new Result(Optional.of(of(s, found, b, angle, radii(found, x, y))), Optional.empty()))
                .orElseGet(() -> Result.refused(Refusal.NO_ELLIPSE));
    }

    private static ChannelTurn of(
            EllipseFit s, EllipseFit found, BlockJackknife scatter, double[] angle, double[] radius) {
        double[][] scale = {
            {s.amplitudeX(), 0, 0, 0, 0},
            {0, s.amplitudeY(), 0, 0, 0},
            {0, 0, s.amplitudeX(), 0, 0},
            {0, 0, 0, s.amplitudeY(), 0},
            {0, 0, 0, 0, 1}
        };
        return new ChannelTurn(found, scatter.covariance().through(scale), scatter.degreesOfFreedom(), angle, radius);
    }

    private static EllipseFit moved(EllipseFit s, double... p) {
        return EllipseFit.ofChannels(
                s.centreX() + (p[0] - 1) * s.amplitudeX(),
                s.centreY() + (p[1] - 1) * s.amplitudeY(),
                s.amplitudeX() * p[2],
                s.amplitudeY() * p[3],
                s.quadratureRad() + p[4] - 1);
    }

    private static double[] radii(EllipseFit e, double[] x, double[] y) {
        double[] all = new double[x.length];
        for (int i = 0; i < all.length; i++) {
            double cosine = (x[i] - e.centreX()) / e.amplitudeX();
            double leading = (y[i] - e.centreY()) / e.amplitudeY();
            double sine = (leading - cosine * Math.sin(e.quadratureRad())) / Math.cos(e.quadratureRad());
            all[i] = Math.hypot(cosine, sine);
        }
        return all;
    }

    private static double widestGap(double... angle) {
        double[] sorted = angle.clone();
        Arrays.sort(sorted);
        double widest = sorted[0] + 2 * Math.PI - sorted[sorted.length - 1];
        for (int i = 1; i < sorted.length; i++) {
            widest = Math.max(widest, sorted[i] - sorted[i - 1]);
        }
        return widest;
    }

    /** Size of both offsets in parts of their amplitudes. */
    public double offset() {
        return Math.hypot(ellipse.centreX() / ellipse.amplitudeX(), ellipse.centreY() / ellipse.amplitudeY());
    }

    /**
     * Largest angle error about its mean over the turn when nothing is taken off, radians; empty when the reading does not even go
     * round, as with an offset above the amplitude.
     */
    public Optional<Double> untreatedRad() {
        FullTurn raw = FullTurn.of(
                shaft -> new Planar(
                        ellipse.centreX() + ellipse.amplitudeX() * Math.cos(shaft),
                        ellipse.centreY() + ellipse.amplitudeY() * Math.sin(shaft + ellipse.quadratureRad())),
                ANGLES);
        return raw.netTurns() == 1 ? Optional.of(raw.error().peakRad()) : Optional.empty();
    }
}
