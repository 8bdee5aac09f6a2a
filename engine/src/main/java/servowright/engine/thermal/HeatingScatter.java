package servowright.engine.thermal;

import java.util.Arrays;
import java.util.stream.IntStream;
import servowright.engine.numeric.Whiteness;

/**
 * Scatter of both kinds of readings of a heating run as it counts: readings that depend on their neighbours weigh less.
 *
 * @param winding     standard deviation of the best resistances, as kelvin
 * @param thermometer standard deviation of the housing's thermometer, K
 * @param freedom     independent readings less unknowns
 */
public record HeatingScatter(double winding, double thermometer, double freedom) {
    /** Before anything is known of it. */
    static final HeatingScatter ALIKE = new HeatingScatter(1, 1, 1);

    /** A scatter below this is not believed. */
    private static final double LEAST_KELVIN = 1e-6;

    /** From what a first fit left over. */
    static HeatingScatter of(HeatingModel model, double... left) {
        int n = model.resistances();
        double[] sigma = ALIKE.sigma(model);
        double[] weighted = IntStream.range(0, left.length)
                .mapToDouble(i -> left[i] / sigma[i])
                .toArray();
        double[] winding = Arrays.copyOf(weighted, n);
        double[] housing = Arrays.copyOfRange(weighted, n, n + model.temperatures());
        if (housing.length == 0) {
            return new HeatingScatter(size(model.unknowns(), winding), 1, freedom(model.unknowns(), winding));
        }
        double share = model.unknowns() / 2.0;
        return new HeatingScatter(
                size(share, winding), size(share, housing), freedom(share, winding) + freedom(share, housing));
    }

    double[] sigma(HeatingModel model) {
        return model.sigma(winding, thermometer);
    }

    private static double freedom(double unknowns, double... left) {
        return Math.max(1, Whiteness.of(left).effectiveCount() - unknowns);
    }

    /** Root of the sum of squares over the independent readings that are left. */
    private static double size(double unknowns, double... left) {
        double sum = Arrays.stream(left).map(v -> v * v).sum();
        return Math.max(LEAST_KELVIN, Math.sqrt(sum / freedom(unknowns, left)));
    }
}
