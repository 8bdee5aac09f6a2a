package servowright.engine.numeric;

import java.util.Arrays;

/** A covariance matrix: symmetric, immutable. */
public final class Covariance {
    private final double[][] rows;

    private Covariance(double[][] rows) {
        this.rows = rows;
    }

    /** Copies a square matrix; the mean of each pair of mirrored elements is kept. */
    public static Covariance of(double[][] matrix) {
        int size = matrix.length;
        double[][] rows = new double[size][size];
        for (int i = 0; i < size; i++) {
            Check.sameLength("a row of a square matrix", size, matrix[i].length);
            for (int j = 0; j < size; j++) {
                rows[i][j] = 0.5 * (matrix[i][j] + matrix[j][i]);
            }
        }
        return new Covariance(rows);
    }

    /** Independent figures with these standard deviations. */
    public static Covariance independent(double... standardDeviations) {
        double[][] rows = new double[standardDeviations.length][standardDeviations.length];
        for (int i = 0; i < rows.length; i++) {
            rows[i][i] = standardDeviations[i] * standardDeviations[i];
        }
        return new Covariance(rows);
    }

    static Covariance unknown(int size) {
        double[][] rows = new double[size][size];
        for (double[] row : rows) {
            Arrays.fill(row, Double.NaN);
        }
        return new Covariance(rows);
    }

    public int size() {
        return rows.length;
    }

    public double at(int i, int j) {
        return rows[i][j];
    }

    /** The matrix, row by row, as a copy that the caller may change. */
    public double[][] toRows() {
        return Arrays.stream(rows).map(double[]::clone).toArray(double[][]::new);
    }

    public double standardDeviation(int i) {
        return Math.sqrt(rows[i][i]);
    }

    public double correlation(int i, int j) {
        return rows[i][j] / Math.sqrt(rows[i][i] * rows[j][j]);
    }

    /** The square roots of the diagonal. */
    public Values standardDeviations() {
        double[] deviations = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            deviations[i] = standardDeviation(i);
        }
        return Values.owned(deviations);
    }

    public Covariance scaledBy(double factor) {
        double[][] scaled = new double[rows.length][];
        for (int i = 0; i < rows.length; i++) {
            scaled[i] = Arrays.stream(rows[i]).map(v -> v * factor).toArray();
        }
        return new Covariance(scaled);
    }

    /** Variance of the sum of gradient[i] times figure i: first-order propagation. */
    public double varianceOf(double... gradient) {
        return covarianceOf(gradient, gradient);
    }

    /** Covariance of two figures with these gradients. */
    public double covarianceOf(double[] a, double[] b) {
        Check.sameLength("a gradient", rows.length, a.length);
        Check.sameLength("a gradient", rows.length, b.length);
        double sum = 0;
        for (int i = 0; i < rows.length; i++) {
            for (int j = 0; j < rows.length; j++) {
                sum += a[i] * rows[i][j] * b[j];
            }
        }
        return sum;
    }

    /** Covariance of several figures, each given by its row of derivatives. */
    public Covariance through(double[][] jacobianRows) {
        int size = jacobianRows.length;
        double[][] result = new double[size][size];
        for (int i = 0; i < size; i++) {
            double[] carried = carried(jacobianRows[i]);
            for (int j = 0; j <= i; j++) {
                Check.sameLength("a gradient", rows.length, jacobianRows[j].length);
                for (int k = 0; k < rows.length; k++) {
                    result[i][j] += carried[k] * jacobianRows[j][k];
                }
                result[j][i] = result[i][j];
            }
        }
        return new Covariance(result);
    }

    /** A gradient times this matrix. */
    private double[] carried(double[] gradient) {
        Check.sameLength("a gradient", rows.length, gradient.length);
        double[] carried = new double[rows.length];
        for (int i = 0; i < rows.length; i++) {
            if (gradient[i] != 0) {
                for (int k = 0; k < rows.length; k++) {
                    carried[k] += gradient[i] * rows[i][k];
                }
            }
        }
        return carried;
    }

    /**
     * The lower triangle L with L times its transpose equal to this matrix. A direction without variance gives a zero
     * column.
     *
     * @throws IllegalArgumentException if the matrix is not positive semidefinite
     */
    double[][] lowerTriangle() {
        int size = rows.length;
        double[][] lower = new double[size][size];
        for (int j = 0; j < size; j++) {
            double rest = rows[j][j];
            for (int k = 0; k < j; k++) {
                rest -= lower[j][k] * lower[j][k];
            }
            double tolerance = 1e-12 * Math.abs(rows[j][j]);
            Check.that(rest >= -tolerance, "a covariance matrix must be positive semidefinite");
            lower[j][j] = rest > tolerance ? Math.sqrt(rest) : 0;
            for (int i = j + 1; i < size; i++) {
                double sum = rows[i][j];
                for (int k = 0; k < j; k++) {
                    sum -= lower[i][k] * lower[j][k];
                }
                lower[i][j] = lower[j][j] > 0 ? sum / lower[j][j] : 0;
            }
        }
        return lower;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Covariance that && Arrays.deepEquals(rows, that.rows);
    }

    @Override
    public int hashCode() {
        return Arrays.deepHashCode(rows);
    }

    @Override
    public String toString() {
        return Arrays.deepToString(rows);
    }
}
