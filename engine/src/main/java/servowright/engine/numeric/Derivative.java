package servowright.engine.numeric;

import java.util.Arrays;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleFunction;
import java.util.function.UnaryOperator;

/**
 * Derivatives by central differences with extrapolation to step zero.
 *
 * <p>C. J. F. Ridders, "Accurate computation of F'(x) and F'(x) F''(x)", Advances in Engineering Software 4 (1982):
 * differences at shrinking steps h, h/4, h/16 ... are extrapolated in a Neville table and the entry with the least
 * estimated error is taken, for each output on its own. Typically exact to 1e-11 of the function's own variation; a
 * kink within the first step spoils it.
 */
public final class Derivative {
    private static final double SHRINK = 4;
    private static final int LEVELS = 6;

    private Derivative() {}

    /** Slope of a function at x; {@code step} is the distance over which it bends noticeably. */
    public static double of(DoubleUnaryOperator function, double x, double step) {
        return gradient(v -> function.applyAsDouble(v[0]), new double[] {x}, new double[] {step})[0];
    }

    /**
     * Partial derivatives of a scalar function, one per variable.
     *
     * @param steps distance along each variable over which the function bends noticeably, above 0; for a propagation of
     *     uncertainty the standard uncertainties are a good choice
     */
    public static double[] gradient(ToDoubleFunction<double[]> function, double[] at, double[] steps) {
        double[][] columns = columns(v -> new double[] {function.applyAsDouble(v)}, at, steps);
        return Arrays.stream(columns).mapToDouble(c -> c[0]).toArray();
    }

    /** Partial derivatives with steps chosen from the size of the variables: a thousandth, or of 1 where it is zero. */
    public static double[] gradient(ToDoubleFunction<double[]> function, double[] at) {
        return gradient(function, at, defaultSteps(at));
    }

    /** Columns of plain central differences with one step: for models that are smooth over it in every variable. */
    public static double[][] central(UnaryOperator<double[]> function, double[] at, double step) {
        Check.positive("step", step);
        double[][] columns = new double[at.length][];
        for (int j = 0; j < at.length; j++) {
            double[] up = at.clone();
            double[] down = at.clone();
            up[j] += step;
            down[j] -= step;
            double[] high = function.apply(up);
            double[] low = function.apply(down);
            for (int i = 0; i < high.length; i++) {
                high[i] = (high[i] - low[i]) / (2 * step);
            }
            columns[j] = high;
        }
        return columns;
    }

    static double[] defaultSteps(double[] at) {
        return Arrays.stream(at).map(v -> v == 0 ? 1e-3 : 1e-3 * Math.abs(v)).toArray();
    }

    /** Column j holds the derivatives of all outputs by variable j. */
    static double[][] columns(UnaryOperator<double[]> function, double[] at, double[] steps) {
        Check.sameLength("steps", at.length, steps.length);
        Check.positive("steps", steps);
        double[][] columns = new double[at.length][];
        for (int j = 0; j < at.length; j++) {
            columns[j] = column(function, at, j, steps[j]);
        }
        return columns;
    }

    private static double[] column(UnaryOperator<double[]> function, double[] at, int j, double firstStep) {
        double[][] differences = new double[LEVELS][];
        double step = firstStep;
        for (int level = 0; level < LEVELS; level++) {
            differences[level] = difference(function, at, j, step);
            step /= SHRINK;
        }
        double[] column = new double[differences[0].length];
        double[] table = new double[LEVELS];
        for (int i = 0; i < column.length; i++) {
            for (int level = 0; level < LEVELS; level++) {
                table[level] = differences[level][i];
            }
            column[i] = extrapolated(table);
        }
        return column;
    }

    private static double[] difference(UnaryOperator<double[]> function, double[] at, int j, double step) {
        double[] point = at.clone();
        point[j] = at[j] + step;
        double above = point[j];
        double[] high = function.apply(point.clone());
        point[j] = at[j] - step;
        double below = point[j];
        double[] low = function.apply(point.clone());
        double[] slope = new double[high.length];
        for (int i = 0; i < slope.length; i++) {
            slope[i] = (high[i] - low[i]) / (above - below);
        }
        return slope;
    }

    /** Neville's table in place: after order m, entry k is the extrapolation of entries k - m to k. */
    private static double extrapolated(double[] table) {
        double best = table[LEVELS - 1];
        double bestError = Double.POSITIVE_INFINITY;
        double factor = 1;
        double[] previous = table.clone();
        for (int order = 1; order < LEVELS; order++) {
            factor *= SHRINK * SHRINK;
            double[] next = previous.clone();
            for (int k = order; k < LEVELS; k++) {
                next[k] = (factor * previous[k] - previous[k - 1]) / (factor - 1);
                double error = Math.max(Math.abs(next[k] - previous[k]), Math.abs(next[k] - previous[k - 1]));
                if (error < bestError) {
                    bestError = error;
                    best = next[k];
                }
            }
            previous = next;
        }
        return best;
    }
}
