package servowright.engine.numeric;

import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.analysis.solvers.BrentSolver;
import org.hipparchus.exception.MathRuntimeException;

/** Where a function of one variable crosses zero. */
public final class Roots {
    private static final int MOST_EVALUATIONS = 500;
    private static final double RELATIVE_ACCURACY = 1e-14;

    private Roots() {}

    /**
     * The crossing between two points at which the function has opposite signs, by Brent's method.
     *
     * <p>R. P. Brent, "Algorithms for Minimization without Derivatives", 1973, chapter 4. Accurate to 1e-14 of the root
     * or to {@code absoluteAccuracy}, whichever is wider. Empty when the signs at the ends are the same or the function
     * is not finite on the way.
     */
    public static OptionalDouble between(
            DoubleUnaryOperator function, double low, double high, double absoluteAccuracy) {
        Check.that(low < high, "a bracket needs low < high, was ", low, high);
        Check.positive("an accuracy", absoluteAccuracy);
        double atLow = function.applyAsDouble(low);
        double atHigh = function.applyAsDouble(high);
        if (atLow == 0 || atHigh == 0) {
            return OptionalDouble.of(atLow == 0 ? low : high);
        }
        if (!(atLow * Math.signum(atHigh) < 0)) {
            return OptionalDouble.empty();
        }
        try {
            BrentSolver solver = new BrentSolver(RELATIVE_ACCURACY, absoluteAccuracy, 0);
            double root = solver.solve(MOST_EVALUATIONS, function::applyAsDouble, low, high);
            return Double.isFinite(function.applyAsDouble(root)) ? OptionalDouble.of(root) : OptionalDouble.empty();
        } catch (MathRuntimeException noRoot) {
            return OptionalDouble.empty();
        }
    }
}
