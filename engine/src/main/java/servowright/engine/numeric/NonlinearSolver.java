package servowright.engine.numeric;

import java.util.Arrays;
import java.util.Optional;

/**
 * The working of {@link NonlinearFit}.
 *
 * <p>Steps: K. Madsen, H. B. Nielsen, O. Tingleff, "Methods for Non-Linear Least Squares Problems", 2nd ed. 2004,
 * algorithm 3.16 with the damping rule (2.21); scaling by the column lengths of the derivatives, J. J. More, "The
 * Levenberg-Marquardt algorithm", Lecture Notes in Mathematics 630, 1978 (from memory). Two tries are made from the
 * same start: with scales that only grow, which is cautious, and with scales that follow; the better minimum is kept.
 *
 * <p>Converged means all of: a Gauss-Newton step from the solution moves no parameter by more than 1e-9 of itself or
 * 1e-6 of its standard error; the derivatives, with columns scaled to length 1, have a condition number below 1e10.
 * The first fails on the way, the second in a valley that has no floor.
 */
final class NonlinearSolver {
    private static final int MOST_ITERATIONS = 2000;
    private static final int MOST_POLISHING = 200;
    private static final double MOST_DAMPING = 1e30;

    /** Share of the predicted gain that a step must bring to be taken. */
    private static final double LEAST_GAIN = 1e-4;

    private static final double WORST_CONDITION = 1e10;
    private static final double STILL_RELATIVE = 1e-9;
    private static final double STILL_IN_SIGMA = 1e-6;

    private final NonlinearModel model;
    private final double[] observed;
    private final double[] sigma;
    private final boolean scalesOnlyGrow;
    private double damping = 1e-3;
    private double growth = 2;
    private int iterations;

    private NonlinearSolver(NonlinearModel model, double[] observed, double[] sigma, boolean scalesOnlyGrow) {
        this.model = model;
        this.observed = observed;
        this.sigma = sigma;
        this.scalesOnlyGrow = scalesOnlyGrow;
    }

    /** A place the search has reached: parameters, weighted residuals and their sum of squares. */
    private record Place(double[] at, double[] residuals, double rss) {}

    static NonlinearFit fit(
            NonlinearModel model, double[] observed, double[] sigma, double[] start, boolean sigmaKnown) {
        Check.finite("observations", observed);
        Check.finite("a start", start);
        Check.sameLength("sigma", observed.length, sigma.length);
        Check.positive("sigma", sigma);
        NonlinearFit cautious = new NonlinearSolver(model, observed, sigma, true).run(start, sigmaKnown);
        NonlinearFit following = new NonlinearSolver(model, observed, sigma, false).run(start, sigmaKnown);
        if (cautious.status().converged() != following.status().converged()) {
            return cautious.status().converged() ? cautious : following;
        }
        return following.residualSumOfSquares() < cautious.residualSumOfSquares() * (1 - 1e-9) ? following : cautious;
    }

    private NonlinearFit run(double[] start, boolean sigmaKnown) {
        Place place = placeAt(start.clone());
        if (observed.length <= start.length) {
            return unfinished(FitStatus.TOO_FEW_OBSERVATIONS, place);
        }
        if (!Double.isFinite(place.rss)) {
            return unfinished(FitStatus.NOT_FINITE, place);
        }
        Place descended = descend(place);
        return polish(descended, sigmaKnown);
    }

    private Place placeAt(double[] parameters) {
        double[] predicted = model.predict(parameters.clone());
        Check.sameLength("predictions", observed.length, predicted.length);
        double rss = 0;
        for (int i = 0; i < predicted.length; i++) {
            predicted[i] = (observed[i] - predicted[i]) / sigma[i];
            rss += predicted[i] * predicted[i];
        }
        return new Place(parameters, predicted, Double.isFinite(rss) ? rss : Double.POSITIVE_INFINITY);
    }

    /** Damped steps until they no longer help. */
    private Place descend(Place start) {
        Place place = start;
        double[] scales = new double[start.at.length];
        while (iterations < MOST_ITERATIONS) {
            GivenUp.check();
            double[][] columns = weightedDerivatives(place.at);
            updateScales(scales, columns);
            HouseholderQr qr = new HouseholderQr(scaled(columns, scales));
            Optional<Place> better = better(place, qr, scales);
            if (better.isEmpty()) {
                return place;
            }
            Place before = place;
            place = better.get();
            if (isStill(before.at, place.at) && before.rss - place.rss <= 1e-12 * before.rss) {
                return place;
            }
        }
        return place;
    }

    /** The next place with a smaller sum of squares, damping as much as it takes. */
    private Optional<Place> better(Place place, HouseholderQr qr, double[] scales) {
        double[] projected = place.residuals.clone();
        qr.applyQTransposed(projected);
        while (iterations++ < MOST_ITERATIONS && damping < MOST_DAMPING) {
            GivenUp.check();
            double[] step = dampedStep(qr, projected, damping);
            Place trial = placeAt(moved(place.at, step, scales));
            double gain = (place.rss - trial.rss) / predictedGain(qr, projected, step);
            if (gain > LEAST_GAIN) {
                damping *= Math.max(1.0 / 3, 1 - Math.pow(2 * gain - 1, 3));
                growth = 2;
                return Optional.of(trial);
            }
            if (isStill(place.at, trial.at)) {
                return Optional.empty();
            }
            damping *= growth;
            growth *= 2;
        }
        return Optional.empty();
    }

    private static boolean isStill(double[] before, double[] after) {
        for (int j = 0; j < before.length; j++) {
            if (Math.abs(after[j] - before[j]) > 1e-10 * Math.abs(before[j])) {
                return false;
            }
        }
        return true;
    }

    private void updateScales(double[] scales, double[][] columns) {
        for (int j = 0; j < scales.length; j++) {
            double length = HouseholderQr.norm(columns[j], 0);
            scales[j] = scalesOnlyGrow ? Math.max(scales[j], length) : length;
            if (!(scales[j] > 0)) {
                scales[j] = 1;
            }
        }
    }

    private double[][] weightedDerivatives(double[] at) {
        double[][] columns = model.derivatives(at.clone());
        Check.sameLength("derivative columns", at.length, columns.length);
        for (double[] column : columns) {
            Check.sameLength("a derivative column", observed.length, column.length);
            for (int i = 0; i < column.length; i++) {
                column[i] = Double.isFinite(column[i]) ? column[i] / sigma[i] : 0;
            }
        }
        return columns;
    }

    private static double[][] scaled(double[][] columns, double[] scales) {
        double[][] scaled = new double[columns.length][];
        for (int j = 0; j < scaled.length; j++) {
            double scale = scales[j];
            scaled[j] = Arrays.stream(columns[j]).map(v -> v / scale).toArray();
        }
        return scaled;
    }

    /** The least-squares solution of R z = c together with sqrt(damping) z = 0. */
    private static double[] dampedStep(HouseholderQr qr, double[] projected, double damping) {
        int p = qr.size();
        double[][] stacked = new double[p][2 * p];
        for (int j = 0; j < p; j++) {
            for (int i = 0; i <= j; i++) {
                stacked[j][i] = qr.r(i, j);
            }
            stacked[j][p + j] = Math.sqrt(damping);
        }
        double[] target = Arrays.copyOf(Arrays.copyOf(projected, p), 2 * p);
        HouseholderQr damped = new HouseholderQr(stacked);
        damped.applyQTransposed(target);
        return damped.solve(target);
    }

    private static double predictedGain(HouseholderQr qr, double[] projected, double[] step) {
        int p = qr.size();
        double gain = 0;
        for (int i = 0; i < p; i++) {
            double moved = 0;
            for (int j = i; j < p; j++) {
                moved += qr.r(i, j) * step[j];
            }
            gain += moved * (2 * projected[i] - moved);
        }
        return Math.max(gain, Double.MIN_NORMAL);
    }

    private static double[] moved(double[] at, double[] step, double[] scales) {
        double[] result = new double[at.length];
        for (int j = 0; j < at.length; j++) {
            result[j] = at[j] + step[j] / scales[j];
        }
        return result;
    }

    /** Gauss-Newton steps until the parameters stand still or the steps stop shrinking. */
    private NonlinearFit polish(Place start, boolean sigmaKnown) {
        Place place = start;
        double last = Double.POSITIVE_INFINITY;
        for (int round = 0; round < MOST_POLISHING; round++) {
            double[][] columns = weightedDerivatives(place.at);
            double[] scales = new double[columns.length];
            for (int j = 0; j < scales.length; j++) {
                scales[j] = HouseholderQr.norm(columns[j], 0);
                if (!(scales[j] > 0)) {
                    return unfinished(FitStatus.NOT_DETERMINED, place);
                }
            }
            HouseholderQr qr = new HouseholderQr(scaled(columns, scales));
            if (qr.isSingular() || qr.conditionNumber() > WORST_CONDITION) {
                return unfinished(FitStatus.RAN_AWAY, place);
            }
            double[] projected = place.residuals.clone();
            qr.applyQTransposed(projected);
            double[] step = qr.solve(projected);
            Covariance covariance = covariance(qr, scales, place, sigmaKnown);
            double size = restlessness(step, scales, place.at, covariance);
            if (size <= 1e-3 || (size <= 1 && size > 0.5 * last)) {
                return finished(place, covariance, qr.conditionNumber());
            }
            Place next = placeAt(moved(place.at, step, scales));
            if (!(Math.sqrt(next.rss) <= Math.sqrt(place.rss) * (1 + 1e-6) + rounding())) {
                return unfinished(FitStatus.NO_DESCENT, place);
            }
            place = next;
            last = size;
        }
        return unfinished(FitStatus.ITERATION_LIMIT, place);
    }

    /** What the length of the residuals may rise by because the observations have no more digits. */
    private double rounding() {
        double sum = 0;
        for (int i = 0; i < observed.length; i++) {
            double rounding = 2 * Math.ulp(observed[i]) / sigma[i];
            sum += rounding * rounding;
        }
        return Math.sqrt(sum);
    }

    /** Size of the largest step in units of what counts as standing still. */
    private static double restlessness(double[] step, double[] scales, double[] at, Covariance covariance) {
        double largest = 0;
        for (int j = 0; j < step.length; j++) {
            double allowed =
                    Math.max(STILL_RELATIVE * Math.abs(at[j]), STILL_IN_SIGMA * covariance.standardDeviation(j));
            double move = Math.abs(step[j] / scales[j]);
            largest = Math.max(largest, move == 0 ? 0 : move / allowed);
        }
        return largest;
    }

    private Covariance covariance(HouseholderQr qr, double[] scales, Place place, boolean sigmaKnown) {
        double variance = sigmaKnown ? 1 : place.rss / (observed.length - scales.length);
        double[][] gram = qr.inverseGram();
        for (int i = 0; i < scales.length; i++) {
            for (int j = 0; j < scales.length; j++) {
                gram[i][j] *= variance / (scales[i] * scales[j]);
            }
        }
        return Covariance.of(gram);
    }

    private NonlinearFit finished(Place place, Covariance covariance, double condition) {
        return result(FitStatus.CONVERGED, place, covariance, condition);
    }

    private NonlinearFit unfinished(FitStatus status, Place place) {
        return result(status, place, Covariance.unknown(place.at.length), Double.NaN);
    }

    private NonlinearFit result(FitStatus status, Place place, Covariance covariance, double condition) {
        double[] residuals = new double[observed.length];
        for (int i = 0; i < residuals.length; i++) {
            residuals[i] = place.residuals[i] * sigma[i];
        }
        int freedom = observed.length - place.at.length;
        return new NonlinearFit(
                status,
                Values.of(place.at),
                covariance,
                Values.owned(residuals),
                place.rss,
                freedom > 0 ? Math.sqrt(place.rss / freedom) : Double.NaN,
                freedom,
                condition,
                iterations,
                1);
    }
}
