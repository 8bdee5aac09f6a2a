package servowright.engine.numeric;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.optim.MaxEval;
import org.hipparchus.optim.nonlinear.scalar.GoalType;
import org.hipparchus.optim.univariate.BrentOptimizer;
import org.hipparchus.optim.univariate.SearchInterval;
import org.hipparchus.optim.univariate.UnivariateObjectiveFunction;
import org.hipparchus.optim.univariate.UnivariatePointValuePair;

/**
 * A least value of a function of one variable.
 *
 * @param at where it is
 * @param value the function there
 */
public record Minimum(double at, double value) {
    private static final int MOST_EVALUATIONS = 500;

    /** Half of the digits: closer to a minimum the function no longer changes in double precision. */
    private static final double RELATIVE_ACCURACY = 1e-8;

    /**
     * A minimum between two points, by Brent's method; the only one if the function falls and then rises.
     *
     * <p>R. P. Brent, "Algorithms for Minimization without Derivatives", 1973, chapter 5. Empty when the function is not
     * finite at the point reached.
     */
    public static Optional<Minimum> between(DoubleUnaryOperator function, double low, double high) {
        Check.that(low < high, "a bracket needs low < high, was ", low, high);
        try {
            double absolute = RELATIVE_ACCURACY * 1e-3 * (high - low);
            UnivariatePointValuePair found = new BrentOptimizer(RELATIVE_ACCURACY, absolute)
                    .optimize(
                            new MaxEval(MOST_EVALUATIONS),
                            new UnivariateObjectiveFunction(function::applyAsDouble),
                            GoalType.MINIMIZE,
                            new SearchInterval(low, high));
            return Double.isFinite(found.getValue())
                    ? Optional.of(new Minimum(found.getPoint(), found.getValue()))
                    : Optional.empty();
        } catch (MathRuntimeException notFound) {
            return Optional.empty();
        }
    }
}
