package servowright.engine.motor;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.Distribution;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.MonteCarlo;
import servowright.engine.numeric.Statistics;
import servowright.engine.numeric.TurnMeans;

/**
 * A sum of orders per turn fitted to means over parts of a turn.
 *
 * <p><b>Formula.</b> c₀ + Σ (a_n cos nθ + b_n sin nθ) by least squares, waves averaged over the same samples. Its range bends where
 * several peaks are nearly as high: noise lifts one of them, so that the range of the fit is too large on average. Parameters
 * drawn from their covariance show by how much, and it is taken off. <b>Source.</b> Least squares; propagation of
 * distributions, JCGM 101:2008, section 7, with the bias taken off as in a parametric bootstrap.
 */
public final class TurnCurve {
    private static final int DRAWS = 100;

    /** The same draws every time: the same recording gives the same range. */
    private static final long SEED = 20_260_101;

    private static final int FINER = 16;

    private final LinearFit fit;
    private final int[] orders;
    private final int senses;
    private final double[] fitted;

    private TurnCurve(LinearFit fit, int[] orders, int senses, double[] fitted) {
        this.fit = fit;
        this.orders = orders;
        this.senses = senses;
        this.fitted = fitted;
    }

    /**
     * Largest less smallest over the turn.
     *
     * @param standard of the noise, and of what noise lifted, which is known no better than by its size
     */
    public record Range(double value, double standard) {}

    /** Fits the orders to the samples of one sense or of both, each sense with a mean of its own. */
    static Optional<TurnCurve> of(int[] orders, int parts, TurnSamples... senses) {
        LinearFit plain = LinearFit.of(Design.ofColumns(columns(orders, senses)), observed(senses));
        if (!plain.status().converged()) {
            return Optional.empty();
        }
        double[] parameters = plain.parameters().toArray();
        double[] fitted = IntStream.range(0, parts)
                .mapToDouble(k -> dot(parameters, senses.length, row(TurnMeans.middle(k, parts), orders)))
                .toArray();
        return Optional.of(new TurnCurve(plain.allowingForDependence(), orders, senses.length, fitted));
    }

    /** The range, with what noise lifts it by taken off. */
    Range range() {
        int parts = fitted.length;
        double[][] rows = new double[parts][];
        Arrays.setAll(rows, k -> row(TurnMeans.middle(k, parts), orders));
        double[] drawn = MonteCarlo.outputs(
                p -> range(rows, p, senses),
                List.of(Distribution.multivariateNormal(fit.parameters().toArray(), fit.covariance())),
                DRAWS,
                new SplittableRandom(SEED));
        double lifted = Statistics.mean(drawn) - range(rows, fit.parameters().toArray(), senses);
        return new Range(plainRange() - lifted, Math.hypot(Statistics.standardDeviation(drawn), lifted));
    }

    /** The range as fitted. */
    double plainRange() {
        int top = 0;
        int bottom = 0;
        for (int k = 1; k < fitted.length; k++) {
            top = fitted[k] > fitted[top] ? k : top;
            bottom = fitted[k] < fitted[bottom] ? k : bottom;
        }
        return near(top, 1) - near(bottom, -1);
    }

    private static double[] observed(TurnSamples... senses) {
        return Arrays.stream(senses)
                .flatMapToDouble(s -> IntStream.of(s.filled()).mapToDouble(k -> s.means()[k]))
                .toArray();
    }

    /** A mean for each sense, then cosine and sine of each order. */
    private static double[][] columns(int[] orders, TurnSamples... senses) {
        int count = Arrays.stream(senses).mapToInt(s -> s.filled().length).sum();
        double[][] columns = new double[senses.length + 2 * orders.length][count];
        int from = 0;
        for (int side = 0; side < senses.length; side++) {
            int[] filled = senses[side].filled();
            Arrays.fill(columns[side], from, from + filled.length, 1);
            for (int j = 0; j < orders.length; j++) {
                double[][] waves = senses[side].waves(orders[j]);
                for (int i = 0; i < filled.length; i++) {
                    columns[senses.length + 2 * j][from + i] = waves[0][filled[i]];
                    columns[senses.length + 2 * j + 1][from + i] = waves[1][filled[i]];
                }
            }
            from += filled.length;
        }
        return columns;
    }

    private static double[] row(double angle, int[] orders) {
        double[] row = new double[2 * orders.length];
        for (int j = 0; j < orders.length; j++) {
            row[2 * j] = Math.cos(orders[j] * angle);
            row[2 * j + 1] = Math.sin(orders[j] * angle);
        }
        return row;
    }

    private static double dot(double[] parameters, int from, double[] row) {
        double sum = 0;
        for (int j = 0; j < row.length; j++) {
            sum += parameters[from + j] * row[j];
        }
        return sum;
    }

    private static double range(double[][] rows, double[] parameters, int from) {
        double most = Double.NEGATIVE_INFINITY;
        double least = Double.POSITIVE_INFINITY;
        for (double[] row : rows) {
            double value = dot(parameters, from, row);
            most = Math.max(most, value);
            least = Math.min(least, value);
        }
        return most - least;
    }

    /** The largest or smallest value within one part of a place. */
    private double near(int part, int sign) {
        double width = 2 * Math.PI / fitted.length;
        double best = fitted[part];
        for (int step = -FINER; step <= FINER; step++) {
            double angle = TurnMeans.middle(part, fitted.length) + width * step / FINER;
            double value = dot(fit.parameters().toArray(), senses, row(angle, orders));
            best = sign * (value - best) > 0 ? value : best;
        }
        return best;
    }

    /** Amplitude of the order at an index. */
    public double amplitude(int index) {
        return Math.hypot(fit.parameter(senses + 2 * index), fit.parameter(senses + 2 * index + 1));
    }

    double amplitudeStandard(int index) {
        double[] gradient = new double[fit.parameters().size()];
        gradient[senses + 2 * index] = fit.parameter(senses + 2 * index) / amplitude(index);
        gradient[senses + 2 * index + 1] = fit.parameter(senses + 2 * index + 1) / amplitude(index);
        return Math.sqrt(fit.covariance().varianceOf(gradient));
    }

    /** The sum of the orders without the mean, in the middle of a part of the turn. */
    public double at(int part) {
        return fitted[part];
    }
}
