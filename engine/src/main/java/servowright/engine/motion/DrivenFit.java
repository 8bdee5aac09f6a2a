package servowright.engine.motion;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.ReturningNoise;
import servowright.engine.quantity.Require;

/**
 * What current and speed of a driven shaft say of the way it moves.
 *
 * <p><b>Formula.</b> dω/dt = g i − a sgn ω − b ω − k ω |ω| + c, with g = K_t/J, a = T_c/J, b viscous drag over J, k a third term of
 * the drag, and c a steady torque or an offset of the current sensing. Linear least squares over means of short stretches, which need no derivative of a noisy
 * speed. <b>Valid for</b> a current that changes while the shaft turns; stretches near standstill are to be left out, since
 * real friction there is larger. With one sense of rotation a and c cannot be told apart, and a is both. <b>Source.</b>
 * Equation of motion; means as in {@link servowright.engine.numeric.SmoothWindows}.
 *
 * @param bothWays whether both senses of rotation are in it, and c was fitted
 * @param quadratic whether k was fitted; it is 0 otherwise
 * @param fit      g rad/s² per ampere, a rad/s², b 1/s and, if fitted, c rad/s² and k 1/rad
 * @param covariance of the same: from neighbours where noise of the speed outweighs everything else, which returns with the other sign in
 *                 the next stretch; from stretches left out otherwise
 * @param freedom  degrees of freedom of that
 */
public record DrivenFit(boolean bothWays, boolean quadratic, LinearFit fit, Covariance covariance, double freedom) {
    /** Noise of the speed alone gives neighbours that overlap by half a correlation of −1/2. */
    private static final double RETURNS = -0.3;

    private static final int STRETCHES = 16;

    /**
     * Fits stretches of a run; empty when they do not determine the terms.
     *
     * @param accelerations mean of dω/dt in each stretch, rad/s²
     * @param amps          mean current
     * @param speeds        mean speed, rad/s, nowhere 0
     * @param quadratic     whether to fit the third term of the drag
     */
    public static Optional<DrivenFit> of(double[] accelerations, double[] amps, double[] speeds, boolean quadratic) {
        return of(accelerations, amps, speeds, IntStream.range(0, speeds.length).toArray(), quadratic);
    }

    /**
     * The same, of stretches some of which are missing.
     *
     * @param positions which stretch of the run each is; neighbours are 1 apart
     */
    public static Optional<DrivenFit> of(
            double[] accelerations, double[] amps, double[] speeds, int[] positions, boolean quadratic) {
        Require.atLeast("stretches", 1, accelerations.length);
        boolean forward = Arrays.stream(speeds).anyMatch(w -> w > 0);
        boolean backward = Arrays.stream(speeds).anyMatch(w -> w < 0);
        boolean bothWays = forward && backward;
        List<double[]> columns = new ArrayList<>();
        columns.add(amps);
        columns.add(Arrays.stream(speeds).map(w -> -Math.signum(w)).toArray());
        columns.add(Arrays.stream(speeds).map(w -> -w).toArray());
        if (bothWays) {
            double[] ones = new double[speeds.length];
            Arrays.fill(ones, 1);
            columns.add(ones);
        }
        if (quadratic) {
            columns.add(Arrays.stream(speeds).map(w -> -w * Math.abs(w)).toArray());
        }
        Design design = Design.ofColumns(columns.toArray(double[][]::new));
        return BlockJackknife.of(design, accelerations, STRETCHES)
                .map(stretches -> judged(bothWays, quadratic, design, stretches, positions));
    }

    private static DrivenFit judged(
            boolean bothWays, boolean quadratic, Design design, BlockJackknife stretches, int... positions) {
        LinearFit fit = stretches.fit();
        return ReturningNoise.correlation(fit, positions) < RETURNS
                ? new DrivenFit(
                        bothWays,
                        quadratic,
                        fit,
                        ReturningNoise.of(design, fit, positions),
                        fit.degreesOfFreedom() / 2.0)
                : new DrivenFit(bothWays, quadratic, fit, stretches.covariance(), stretches.degreesOfFreedom());
    }

    /** Whether noise of the speed outweighs everything else in the residuals. */
    public boolean returning() {
        return freedom > STRETCHES;
    }

    /** Standard uncertainty of a term, counted as in the fit. */
    public double standardError(int term) {
        return covariance.standardDeviation(term);
    }

    /** g, acceleration per ampere, rad/s² per A. */
    public double perAmp() {
        return fit.parameter(0);
    }

    /** a, slowing down by dry drag, rad/s². */
    public double constantRadPerS2() {
        return fit.parameter(1);
    }

    /** b, slowing down per speed, 1/s. */
    public double perSecond() {
        return fit.parameter(2);
    }

    /** c, steady acceleration, rad/s². */
    public double steadyRadPerS2() {
        return bothWays ? fit.parameter(3) : 0;
    }

    /** k, slowing down per speed squared, 1/rad. */
    public double perRadian() {
        return quadratic ? fit.parameter(bothWays ? 4 : 3) : 0;
    }
}
