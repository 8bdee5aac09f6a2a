package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Propagation;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Quantity;

/**
 * Coefficients of a linear model of points, with an uncertainty that suits how they were taken: from stretches left out
 * along a recording; from scatter or last digits, whichever is larger, for readings.
 *
 * @param freedom   degrees of freedom of the covariance
 * @param residuals observed less fitted
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Trace
record Fitted(double[] parameters, Covariance covariance, double freedom, double[] residuals) {
    private static final int STRETCHES = 16;

    /** Fits the points with these columns; empty when they do not determine the coefficients. */
    static Optional<Fitted> of(Points points, double[]... columns) {
        Design design = Design.ofColumns(columns);
        if (points.recorded()) {
            return BlockJackknife.of(design, points.y(), STRETCHES)
                    .map(b -> of(b.fit(), b.covariance(), b.degreesOfFreedom()));
        }
        if (points.y().length < columns.length) {
            return Optional.empty();
        }
        LinearFit byDigits = LinearFit.withKnownSigma(design, points.y(), sigma(points));
        if (!byDigits.status().converged()) {
            return Optional.empty();
        }
        LinearFit byScatter = LinearFit.of(design, points.y());
        int last = columns.length - 1;
        boolean scatter =
                byScatter.status().converged() && byScatter.standardError(last) > byDigits.standardError(last);
        return Optional.of(
                scatter
                        ? of(byScatter, byScatter.covariance(), byScatter.degreesOfFreedom())
                        : of(byDigits, byDigits.covariance(), Double.POSITIVE_INFINITY));
    }

    private static Fitted of(LinearFit fit, Covariance covariance, double freedom) {
        return new Fitted(
                fit.parameters().toArray(), covariance, freedom, fit.residuals().toArray());
    }

    /** Last digits of both, those of x by the mean slope. */
    private static double[] sigma(Points points) {
        double largestX = Arrays.stream(points.x()).map(Math::abs).max().orElse(0);
        double largestY = Arrays.stream(points.y()).map(Math::abs).max().orElse(0);
        double slope = largestX > 0 ? largestY / largestX : 0;
        double[] sigma = new double[points.x().length];
        for (int i = 0; i < sigma.length; i++) {
            sigma[i] = Math.max(
                    Math.hypot(points.yDigits()[i], slope * points.xDigits()[i]), 1e-9 * Math.max(1e-9, largestY));
        }
        return sigma;
    }

    /** Standard deviation of what is left over. */
    double rms() {
        return Math.sqrt(Arrays.stream(residuals).map(r -> r * r).average().orElse(0));
    }

    double sumOfSquares() {
        return Arrays.stream(residuals).map(r -> r * r).sum();
    }

    double error(int j) {
        return covariance.standardDeviation(j);
    }

    /** The coefficients as uncertain numbers that move together. */
    List<Known> known(String id, String... units) {
        List<Quantity> values = new ArrayList<>();
        for (int j = 0; j < units.length; j++) {
            values.add(Quantity.of(parameters[j], units[j]));
        }
        return Propagation.jointly(values, covariance.toRows(), id + " fit", freedom, Origin.MEASURED, id);
    }
}
