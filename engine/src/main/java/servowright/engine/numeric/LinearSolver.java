package servowright.engine.numeric;

import java.util.Arrays;

/** The working of {@link LinearFit}: one weighted, scaled, refined solution. */
final class LinearSolver {
    private static final int MOST_REFINEMENTS = 20;

    private final double[][] columns;
    private final double[] target;
    private final double[] scales;
    private final HouseholderQr qr;

    private LinearSolver(Design design, double[] observed, double[] sigma) {
        int p = design.parameters();
        target = divided(observed, sigma);
        columns = new double[p][];
        scales = new double[p];
        for (int j = 0; j < p; j++) {
            columns[j] = divided(design.column(j), sigma);
            scales[j] = powerOfTwoNear(columns[j]);
            for (int i = 0; i < columns[j].length; i++) {
                columns[j][i] /= scales[j];
            }
        }
        qr = new HouseholderQr(columns);
    }

    static LinearFit fit(Design design, double[] observed, double[] sigma, boolean sigmaKnown) {
        int n = design.observations();
        int p = design.parameters();
        Check.sameLength("observations", n, observed.length);
        Check.sameLength("sigma", n, sigma.length);
        Check.finite("observations", observed);
        Check.positive("sigma", sigma);
        if (n < p || (n == p && !sigmaKnown)) {
            return LinearFit.failed(FitStatus.TOO_FEW_OBSERVATIONS, n, p, Double.NaN);
        }
        LinearSolver solver = new LinearSolver(design, observed, sigma);
        if (solver.qr.isSingular()) {
            return LinearFit.failed(FitStatus.NOT_DETERMINED, n, p, Double.POSITIVE_INFINITY);
        }
        return solver.solve(sigma, sigmaKnown);
    }

    private LinearFit solve(double[] sigma, boolean sigmaKnown) {
        int n = target.length;
        int p = columns.length;
        double[] residuals = new double[n];
        double[] x = refined(residuals);
        double rss = AccurateSum.dot(residuals, residuals);
        double variance = n > p ? rss / (n - p) : Double.NaN;
        double[][] gram = qr.inverseGram();
        for (int i = 0; i < p; i++) {
            x[i] /= scales[i];
            for (int j = 0; j < p; j++) {
                gram[i][j] *= (sigmaKnown ? 1 : variance) / (scales[i] * scales[j]);
            }
        }
        for (int i = 0; i < n; i++) {
            residuals[i] *= sigma[i];
        }
        return new LinearFit(
                FitStatus.CONVERGED,
                Values.owned(x),
                Covariance.of(gram),
                Values.owned(residuals),
                rss,
                Math.sqrt(variance),
                1 - rss / sumAboutMean(sigma),
                1 - rss / AccurateSum.dot(target, target),
                n - p,
                qr.conditionNumber(),
                1);
    }

    /** Solves r + A x = y with A transposed times r = 0; r is filled in, x returned in scaled columns. */
    private double[] refined(double[] r) {
        double[] x = new double[columns.length];
        double last = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_REFINEMENTS; round++) {
            double[] change = correction(x, r);
            double size = HouseholderQr.norm(change, 0);
            if (!(size < 0.5 * last)) {
                break;
            }
            for (int j = 0; j < x.length; j++) {
                x[j] += change[j];
            }
            last = size;
            if (size <= 1e-18 * HouseholderQr.norm(x, 0)) {
                break;
            }
        }
        exactResiduals(x, r);
        return x;
    }

    /** One step of the augmented system; changes r and returns the change of x. */
    private double[] correction(double[] x, double[] r) {
        int p = x.length;
        double[] f = new double[r.length];
        for (int i = 0; i < r.length; i++) {
            AccurateSum sum = residual(x, i);
            sum.add(-r[i]);
            f[i] = sum.value();
        }
        double[] g = new double[p];
        for (int j = 0; j < p; j++) {
            g[j] = -AccurateSum.dot(columns[j], r);
        }
        double[] h = qr.solveTransposed(g);
        qr.applyQTransposed(f);
        double[] head = Arrays.copyOf(f, p);
        for (int j = 0; j < p; j++) {
            head[j] -= h[j];
            f[j] = h[j];
        }
        qr.applyQ(f);
        for (int i = 0; i < r.length; i++) {
            r[i] += f[i];
        }
        return qr.solve(head);
    }

    private AccurateSum residual(double[] x, int i) {
        AccurateSum sum = new AccurateSum();
        sum.add(target[i]);
        for (int j = 0; j < x.length; j++) {
            sum.addProduct(-columns[j][i], x[j]);
        }
        return sum;
    }

    private void exactResiduals(double[] x, double[] r) {
        for (int i = 0; i < r.length; i++) {
            r[i] = residual(x, i).value();
        }
    }

    private double sumAboutMean(double[] sigma) {
        AccurateSum weights = new AccurateSum();
        AccurateSum weighted = new AccurateSum();
        for (int i = 0; i < target.length; i++) {
            weights.add(1 / (sigma[i] * sigma[i]));
            weighted.add(target[i] / sigma[i]);
        }
        double mean = weighted.value() / weights.value();
        AccurateSum sum = new AccurateSum();
        for (int i = 0; i < target.length; i++) {
            double difference = target[i] - mean / sigma[i];
            sum.addProduct(difference, difference);
        }
        return sum.value();
    }

    private static double[] divided(double[] values, double[] by) {
        double[] result = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            result[i] = values[i] / by[i];
        }
        return result;
    }

    private static double powerOfTwoNear(double[] column) {
        double norm = HouseholderQr.norm(column, 0);
        return norm > 0 ? Math.scalb(1.0, Math.getExponent(norm)) : 1;
    }
}
