package servowright.engine.numeric;

import java.util.Arrays;

/** The regressors of a linear fit, one column each. */
public final class Design {
    private final double[][] columns;

    private Design(double[][] columns) {
        this.columns = columns;
    }

    /** Any regressors, each with one value per observation. A constant term is a column of ones. */
    public static Design ofColumns(double[]... columns) {
        Check.that(columns.length > 0, "a design needs at least one column");
        double[][] copy = new double[columns.length][];
        for (int j = 0; j < columns.length; j++) {
            Check.sameLength("a design column", columns[0].length, columns[j].length);
            Check.finite("a design column", columns[j]);
            copy[j] = columns[j].clone();
        }
        return new Design(copy);
    }

    /** Parameter 0 is the intercept, parameter 1 the slope. */
    public static Design line(double[] x) {
        return polynomial(x, 1);
    }

    /** One parameter, the slope of a line through zero. */
    public static Design lineThroughZero(double[] x) {
        return ofColumns(x);
    }

    /** Parameter k is the coefficient of the k-th power of x. */
    public static Design polynomial(double[] x, int degree) {
        Check.that(degree >= 0, "a degree must not be below 0");
        double[][] powers = new double[degree + 1][x.length];
        Arrays.fill(powers[0], 1);
        for (int k = 1; k <= degree; k++) {
            for (int i = 0; i < x.length; i++) {
                powers[k][i] = powers[k - 1][i] * x[i];
            }
        }
        return ofColumns(powers);
    }

    public int observations() {
        return columns[0].length;
    }

    public int parameters() {
        return columns.length;
    }

    double[] column(int j) {
        return columns[j];
    }
}
