package servowright.engine.numeric;

import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.SingularValueDecomposition;

/**
 * A = Q R by Householder reflections, for matrices with at least as many rows as columns, held by columns.
 *
 * <p>G. H. Golub, C. F. Van Loan, "Matrix Computations", 4th ed. 2013, section 5.2. No pivoting: columns are expected
 * to be scaled to about the same length.
 */
final class HouseholderQr {
    private static final double RANK_TOLERANCE = 4 * Math.ulp(1.0);

    /** Column j holds R above the diagonal and the reflection vector from the diagonal down. */
    private final double[][] columns;

    private final double[] diagonal;
    private final double[] betas;

    HouseholderQr(double[][] matrixColumns) {
        int p = matrixColumns.length;
        columns = new double[p][];
        for (int j = 0; j < p; j++) {
            columns[j] = matrixColumns[j].clone();
        }
        diagonal = new double[p];
        betas = new double[p];
        for (int j = 0; j < p; j++) {
            reflect(j);
        }
    }

    private void reflect(int j) {
        double[] column = columns[j];
        double norm = norm(column, j);
        if (norm == 0) {
            return;
        }
        double alpha = column[j] > 0 ? -norm : norm;
        diagonal[j] = alpha;
        column[j] -= alpha;
        betas[j] = -1 / (alpha * column[j]);
        for (int k = j + 1; k < columns.length; k++) {
            applyReflection(j, columns[k]);
        }
    }

    /** Length of the part of v from an index on, without overflow or underflow on the way. */
    static double norm(double[] v, int from) {
        double largest = 0;
        for (int i = from; i < v.length; i++) {
            largest = Math.max(largest, Math.abs(v[i]));
        }
        if (!(largest > 0 && largest < Double.POSITIVE_INFINITY)) {
            return largest;
        }
        double sum = 0;
        for (int i = from; i < v.length; i++) {
            double part = v[i] / largest;
            sum += part * part;
        }
        return largest * Math.sqrt(sum);
    }

    private void applyReflection(int j, double[] v) {
        double[] reflection = columns[j];
        double dot = 0;
        for (int i = j; i < v.length; i++) {
            dot += reflection[i] * v[i];
        }
        double factor = betas[j] * dot;
        for (int i = j; i < v.length; i++) {
            v[i] -= factor * reflection[i];
        }
    }

    /** Replaces v by the product of the transposed Q with v. */
    void applyQTransposed(double[] v) {
        for (int j = 0; j < columns.length; j++) {
            applyReflection(j, v);
        }
    }

    /** Replaces v by the product of Q with v. */
    void applyQ(double[] v) {
        for (int j = columns.length - 1; j >= 0; j--) {
            applyReflection(j, v);
        }
    }

    double r(int i, int j) {
        if (i == j) {
            return diagonal[i];
        }
        return i < j ? columns[j][i] : 0;
    }

    int size() {
        return columns.length;
    }

    boolean isSingular() {
        double largest = 0;
        for (double d : diagonal) {
            largest = Math.max(largest, Math.abs(d));
        }
        for (double d : diagonal) {
            if (!(Math.abs(d) > RANK_TOLERANCE * largest)) {
                return true;
            }
        }
        return diagonal.length > 0 && largest == 0;
    }

    /** Solves R x = b with the leading part of b. */
    double[] solve(double[] b) {
        int p = size();
        double[] x = new double[p];
        for (int i = p - 1; i >= 0; i--) {
            double sum = b[i];
            for (int k = i + 1; k < p; k++) {
                sum -= r(i, k) * x[k];
            }
            x[i] = sum / diagonal[i];
        }
        return x;
    }

    /** Solves the system of the transposed R. */
    double[] solveTransposed(double[] b) {
        int p = size();
        double[] x = new double[p];
        for (int i = 0; i < p; i++) {
            double sum = b[i];
            for (int k = 0; k < i; k++) {
                sum -= r(k, i) * x[k];
            }
            x[i] = sum / diagonal[i];
        }
        return x;
    }

    /** The inverse of the product of the transposed A with A. */
    double[][] inverseGram() {
        int p = size();
        double[][] inverse = new double[p][];
        for (int j = 0; j < p; j++) {
            double[] unit = new double[p];
            unit[j] = 1;
            inverse[j] = solve(solveTransposed(unit));
        }
        return inverse;
    }

    /** Ratio of the largest to the smallest singular value; infinite for a singular matrix. */
    double conditionNumber() {
        int p = size();
        double[][] r = new double[p][p];
        for (int i = 0; i < p; i++) {
            for (int j = i; j < p; j++) {
                r[i][j] = r(i, j);
            }
        }
        double[] singular = new SingularValueDecomposition(MatrixUtils.createRealMatrix(r)).getSingularValues();
        return singular[0] / singular[p - 1];
    }
}
