package servowright.engine.numeric;

import java.util.Arrays;
import java.util.Optional;
import org.hipparchus.exception.MathRuntimeException;
import org.hipparchus.linear.CholeskyDecomposition;
import org.hipparchus.linear.DecompositionSolver;
import org.hipparchus.linear.MatrixUtils;
import org.hipparchus.linear.RealMatrix;

/**
 * One pass over all samples of a harmonic fit: normal equations of the residuals at given figures.
 *
 * <p>Figures are, about the middle of the record: offset, drift over half the record, cosine and sine coefficient of
 * each order and of the line, and the phase that the base frequency gains over half the record. In these units the normal equations are
 * well conditioned; since every pass works on residuals, later passes also refine the linear figures.
 */
final class HarmonicPass {
    private static final int BLOCK = 512;

    private final HarmonicTerms terms;
    private final double[] samples;
    private final Abscissa abscissa;
    private final double halfSpan;
    private final int linear;
    private final double[][] columns;
    private final double[] left = new double[BLOCK];
    private final double[] baseCosine = new double[BLOCK];
    private final double[] baseSine = new double[BLOCK];
    private final double[] cosine = new double[BLOCK];
    private final double[] sine = new double[BLOCK];
    private final double[] distance = new double[BLOCK];
    private Covariance inverse = Covariance.unknown(0);
    private double countedOmega = Double.NaN;
    private HarmonicSums counts = new HarmonicSums(0);

    HarmonicPass(HarmonicTerms terms, double[] samples, Abscissa abscissa) {
        this.terms = terms;
        this.samples = samples;
        this.abscissa = abscissa;
        this.halfSpan = abscissa.halfSpan();
        this.linear = lineColumn() + (terms.line().isPresent() ? 2 : 0);
        this.columns = new double[linear + 1][BLOCK];
        Arrays.fill(columns[0], 1);
    }

    int linear() {
        return linear;
    }

    int firstOrderColumn() {
        return terms.drift() ? 2 : 1;
    }

    int lineColumn() {
        return firstOrderColumn() + 2 * terms.orders().size();
    }

    /** The least-squares step from the figures of a pass, and what the pass found. */
    record Step(Values change, Covariance inverse, double rss, double gain) {}

    /** Normal equations at these figures; the frequency column is last and only there when asked for. */
    Optional<Step> step(double omega, double[] figures, boolean withFrequency) {
        int size = linear + (withFrequency ? 1 : 0);
        double[][] gram = new double[size][size];
        double[] right = new double[size];
        double rss = 0;
        boolean counted = omega == countedOmega;
        HarmonicSums sums = counted ? counts : sums(omega);
        for (int start = 0; start < samples.length; start += BLOCK) {
            GivenUp.check();
            int length = Math.min(BLOCK, samples.length - start);
            fillBlock(start, length, omega, figures);
            if (withFrequency) {
                fillFrequency(length, figures);
            }
            if (!counted && !abscissa.even()) {
                sums.add(baseCosine, baseSine, length);
            }
            for (int i = 0; i < size; i++) {
                right[i] += dot(columns[i], left, length);
            }
            for (int row = lineColumn(); row < size; row++) {
                addRow(gram, row, row + 1, length);
            }
            if (terms.drift()) {
                addRow(gram, 1, lineColumn(), length);
            }
            rss += dot(left, left, length);
        }
        countedOmega = omega;
        counts = sums;
        fillGram(gram, sums);
        Optional<Covariance> solved = inverted(gram);
        if (solved.isEmpty()) {
            return Optional.empty();
        }
        inverse = solved.get();
        return Optional.of(stepped(inverse, right, rss));
    }

    /** The step with the normal equations of the step before, frequency included: close by they hardly change. */
    Step again(double omega, double[] figures) {
        double[] right = new double[linear + 1];
        double rss = 0;
        for (int start = 0; start < samples.length; start += BLOCK) {
            GivenUp.check();
            int length = Math.min(BLOCK, samples.length - start);
            fillBlock(start, length, omega, figures);
            fillFrequency(length, figures);
            for (int i = 0; i <= linear; i++) {
                right[i] += dot(columns[i], left, length);
            }
            rss += dot(left, left, length);
        }
        return stepped(inverse, right, rss);
    }

    /** Those of evenly spaced samples are known; others are to be added up. */
    private HarmonicSums sums(double omega) {
        int highest = 2 * terms.highestOrder();
        return abscissa.even()
                ? HarmonicSums.even(highest, omega * abscissa.meanInterval(), samples.length)
                : new HarmonicSums(highest);
    }

    /** Products of one column with the first {@code count} columns; the lower triangle is filled. */
    private void addRow(double[][] gram, int row, int count, int length) {
        for (int j = 0; j < count; j++) {
            gram[Math.max(row, j)][Math.min(row, j)] += dot(columns[row], columns[j], length);
        }
    }

    /** Products of the offset and the orders, which need no pass of their own. */
    private void fillGram(double[][] gram, HarmonicSums sums) {
        gram[0][0] = samples.length;
        int first = firstOrderColumn();
        for (int a = 0; a < terms.orders().size(); a++) {
            int row = first + 2 * a;
            int order = terms.orders().get(a);
            gram[row][0] = sums.cosine(order);
            gram[row + 1][0] = sums.sine(order);
            for (int b = 0; b <= a; b++) {
                int column = first + 2 * b;
                int lower = terms.orders().get(b);
                gram[row][column] = 0.5 * (sums.cosine(order - lower) + sums.cosine(order + lower));
                gram[row + 1][column + 1] = 0.5 * (sums.cosine(order - lower) - sums.cosine(order + lower));
                gram[row + 1][column] = 0.5 * (sums.sine(order + lower) + sums.sine(order - lower));
                if (b < a) {
                    gram[row][column + 1] = 0.5 * (sums.sine(order + lower) - sums.sine(order - lower));
                }
            }
        }
    }

    /** Residuals of all samples at these figures. */
    double[] residuals(double omega, double[] figures) {
        double[] residuals = new double[samples.length];
        for (int start = 0; start < samples.length; start += BLOCK) {
            GivenUp.check();
            int length = Math.min(BLOCK, samples.length - start);
            fillBlock(start, length, omega, figures);
            System.arraycopy(left, 0, residuals, start, length);
        }
        return residuals;
    }

    private void fillBlock(int start, int length, double omega, double[] figures) {
        abscissa.fill(start, length, omega, distance, baseCosine, baseSine);
        if (terms.drift()) {
            for (int i = 0; i < length; i++) {
                columns[1][i] = distance[i] / halfSpan;
            }
        }
        fillOrders(length);
        System.arraycopy(samples, start, left, 0, length);
        int first = firstOrderColumn();
        for (int i = 0; i < length; i++) {
            left[i] -= figures[0] + (first == 2 ? figures[1] * columns[1][i] : 0);
        }
        terms.line()
                .ifPresent(hertz -> abscissa.fill(
                        start, length, 2 * Math.PI * hertz, distance, columns[linear - 2], columns[linear - 1]));
        for (int j = first; j < linear; j += 2) {
            subtract(left, figures[j], columns[j], figures[j + 1], columns[j + 1], length);
        }
    }

    /** Sines of all orders as powers of the base pointer. */
    private void fillOrders(int length) {
        System.arraycopy(baseCosine, 0, cosine, 0, length);
        System.arraycopy(baseSine, 0, sine, 0, length);
        int column = firstOrderColumn();
        int next = 0;
        for (int order = 1; order <= terms.highestOrder(); order++) {
            if (order > 1) {
                turn(length);
            }
            if (terms.orders().get(next) == order) {
                System.arraycopy(cosine, 0, columns[column++], 0, length);
                System.arraycopy(sine, 0, columns[column++], 0, length);
                next++;
            }
        }
    }

    private void turn(int length) {
        for (int i = 0; i < length; i++) {
            double c = cosine[i] * baseCosine[i] - sine[i] * baseSine[i];
            sine[i] = sine[i] * baseCosine[i] + cosine[i] * baseSine[i];
            cosine[i] = c;
        }
    }

    /** The derivative by the phase that the base frequency gains over half the record. */
    private void fillFrequency(int length, double[] figures) {
        double[] slope = columns[linear];
        Arrays.fill(slope, 0, length, 0);
        int column = firstOrderColumn();
        for (int order : terms.orders()) {
            subtract(
                    slope,
                    order * figures[column],
                    columns[column + 1],
                    -order * figures[column + 1],
                    columns[column],
                    length);
            column += 2;
        }
        for (int i = 0; i < length; i++) {
            slope[i] *= distance[i] / halfSpan;
        }
    }

    private static void subtract(
            double[] from, double factor, double[] column, double second, double[] beside, int length) {
        for (int i = 0; i < length; i++) {
            from[i] -= factor * column[i] + second * beside[i];
        }
    }

    private static double dot(double[] a, double[] b, int length) {
        double s0 = 0;
        double s1 = 0;
        double s2 = 0;
        double s3 = 0;
        int i = 0;
        for (; i + 3 < length; i += 4) {
            s0 += a[i] * b[i];
            s1 += a[i + 1] * b[i + 1];
            s2 += a[i + 2] * b[i + 2];
            s3 += a[i + 3] * b[i + 3];
        }
        for (; i < length; i++) {
            s0 += a[i] * b[i];
        }
        return (s0 + s1) + (s2 + s3);
    }

    private static Step stepped(Covariance inverse, double[] right, double rss) {
        double[] change = new double[right.length];
        double gain = 0;
        for (int i = 0; i < right.length; i++) {
            for (int j = 0; j < right.length; j++) {
                change[i] += inverse.at(i, j) * right[j];
            }
            gain += change[i] * right[i];
        }
        return new Step(Values.owned(change), inverse, rss, gain);
    }

    /** Inverse of the normal equations, of which the lower triangle is given; empty when they are singular. */
    private static Optional<Covariance> inverted(double[][] gram) {
        int size = gram.length;
        double[] scale = new double[size];
        for (int i = 0; i < size; i++) {
            scale[i] = Math.sqrt(gram[i][i]);
            if (!(scale[i] > 0)) {
                return Optional.empty();
            }
        }
        RealMatrix matrix = MatrixUtils.createRealMatrix(size, size);
        for (int i = 0; i < size; i++) {
            for (int j = 0; j <= i; j++) {
                double value = gram[i][j] / (scale[i] * scale[j]);
                matrix.setEntry(i, j, value);
                matrix.setEntry(j, i, value);
            }
        }
        try {
            DecompositionSolver solver = new CholeskyDecomposition(matrix, 1e-12, 1e-13).getSolver();
            double[][] inverse = solver.getInverse().getData();
            for (int i = 0; i < size; i++) {
                for (int j = 0; j < size; j++) {
                    inverse[i][j] /= scale[i] * scale[j];
                }
            }
            return Optional.of(Covariance.of(inverse));
        } catch (MathRuntimeException singular) {
            return Optional.empty();
        }
    }
}
