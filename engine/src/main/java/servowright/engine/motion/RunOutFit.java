package servowright.engine.motion;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.quantity.Require;

/**
 * What a recorded run-out says of the slowing down of a shaft.
 *
 * <p><b>Formula.</b> dω/dt = −(a + b ω + c ω²), integrated once: ω(t) = ω₀ − a t − b ∫ω dt − c ∫ω² dt. That is linear in ω₀,
 * a, b and c, needs no start values and no derivative of a noisy speed; a fit finds them. Drag torque is inertia times the
 * three. <b>Valid for</b> one sense of rotation and samples that follow each other fast against the run-out; noise σ adds
 * c σ² to a, which is left out. Near standstill real friction is larger than the model. <b>Source.</b> Integral form of the
 * retardation test, linear least squares.
 *
 * @param quadratic whether c was fitted; it is 0 otherwise
 * @param fit       parameters ω₀ rad/s, a rad/s², b 1/s and, if fitted, c 1/rad; covariance from stretches left out
 */
public record RunOutFit(boolean quadratic, BlockJackknife fit) {
    private static final int STEPS = 400;
    private static final int STRETCHES = 16;

    /**
     * Fits speeds over rising times; empty when the fit fails.
     *
     * @param quadratic whether to fit a third term
     */
    public static Optional<RunOutFit> of(double[] seconds, double[] radPerS, boolean quadratic) {
        int n = seconds.length;
        double[] ones = new double[n];
        Arrays.fill(ones, 1);
        double[] time = new double[n];
        double[] once = new double[n];
        double[] squared = new double[n];
        for (int i = 1; i < n; i++) {
            double step = seconds[i] - seconds[i - 1];
            double before = radPerS[i - 1];
            double here = radPerS[i];
            time[i] = seconds[0] - seconds[i];
            once[i] = once[i - 1] - step * (before + here) / 2;
            squared[i] = squared[i - 1] - step * (before * before + here * here) / 2;
        }
        Design design = quadratic ? Design.ofColumns(ones, time, once, squared) : Design.ofColumns(ones, time, once);
        return BlockJackknife.of(design, radPerS, STRETCHES).map(fit -> new RunOutFit(quadratic, fit));
    }

    /** a, slowing down that does not depend on speed, rad/s². */
    public double constantRadPerS2() {
        return fit.parameter(1);
    }

    /** b, slowing down per speed, 1/s. */
    public double perSecond() {
        return fit.parameter(2);
    }

    /** c, slowing down per speed squared, 1/rad. */
    public double perRadian() {
        return quadratic ? fit.parameter(3) : 0;
    }

    /** Slowing down at a speed, rad/s². */
    public double slowingRadPerS2(double radPerS) {
        return constantRadPerS2() + (perSecond() + perRadian() * radPerS) * radPerS;
    }

    /** Time from one speed down to another, ∫ dω / (a + b ω + c ω²) by Simpson's rule, s. */
    public double secondsBetween(double highRadPerS, double lowRadPerS) {
        double step = Require.positive("fall of the speed", highRadPerS - lowRadPerS, "rad/s") / STEPS;
        double sum = 0;
        for (int i = 0; i <= STEPS; i++) {
            int weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            sum += weight / slowingRadPerS2(lowRadPerS + i * step);
        }
        return sum * step / 3;
    }

    /**
     * Standard uncertainty of that time from the scatter of the fit, s.
     *
     * @return √(g C gᵀ) with g the sensitivities −∫ ωᵏ / (a + b ω + c ω²)² dω
     */
    public double secondsBetweenError(double highRadPerS, double lowRadPerS) {
        double step = (highRadPerS - lowRadPerS) / STEPS;
        double[] gradient = new double[fit.covariance().size()];
        for (int i = 0; i <= STEPS; i++) {
            int weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
            double speed = lowRadPerS + i * step;
            double slowing = slowingRadPerS2(speed);
            for (int k = 1; k < gradient.length; k++) {
                gradient[k] -= weight * Math.pow(speed, k - 1) / (slowing * slowing) * step / 3;
            }
        }
        return Math.sqrt(fit.covariance().varianceOf(gradient));
    }
}
