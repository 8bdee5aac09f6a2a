package servowright.engine.known;

import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * First-order propagation of uncertainty: \( c_s(y) = \sum_i \frac{\partial f}{\partial x_i} c_s(x_i) \) for each source s.
 *
 * <p><b>Valid for</b> functions that are straight enough over the uncertainties put in. Where they bend, a Monte Carlo
 * run (JCGM 101) is the caller's choice. <b>Source.</b> JCGM 100:2008, 5.1.2 equation (10), 5.2.2 equation (13).
 */
public final class Propagation {
    private Propagation() {}

    /**
     * The function's value with the uncertainties of its inputs carried through. Sensitivities are central differences
     * with a step of a hundredth of the input's standard uncertainty, or 1e-6 of its size where that is larger.
     *
     * @param result dimension of the function's value
     * @param f      takes the inputs' SI values in their order
     */
    public static Known derive(Dimension result, ToDoubleFunction<double[]> f, List<Known> inputs) {
        double[] x = inputs.stream().mapToDouble(Known::si).toArray();
        double[] slopes = new double[x.length];
        for (int i = 0; i < x.length; i++) {
            double u = inputs.get(i).standardUncertainty();
            if (u > 0) {
                double step = Math.max(u / 100, 1e-6 * Math.abs(x[i]));
                double[] up = x.clone();
                double[] down = x.clone();
                up[i] += step;
                down[i] -= step;
                slopes[i] = (f.applyAsDouble(up) - f.applyAsDouble(down)) / (up[i] - down[i]);
            }
        }
        return linear(result, f.applyAsDouble(x), inputs, slopes);
    }

    /** A value with known sensitivities to its inputs, each in SI units of the result per SI unit of the input. */
    public static Known linear(Dimension result, double si, List<Known> inputs, double... slopes) {
        TreeMap<Source, Double> parts = new TreeMap<>();
        EnumSet<Origin> restsOn = EnumSet.of(Origin.DERIVED);
        for (int i = 0; i < slopes.length; i++) {
            restsOn.addAll(inputs.get(i).restsOn());
            for (Map.Entry<Source, Double> part : inputs.get(i).parts().entrySet()) {
                parts.merge(part.getKey(), slopes[i] * part.getValue(), Double::sum);
            }
        }
        parts.values().removeIf(c -> c == 0);
        return new Known(new Quantity(si, result), parts, Origin.DERIVED, restsOn, "");
    }

    /**
     * Figures that one fit gave together: their covariance is kept by writing it as a sum over independent sources,
     * the columns of its Cholesky factor. A covariance that is only semi-definite is taken as it is.
     *
     * @param values           best estimates
     * @param covariance       SI, row by row in the order of the values
     * @param fit              id of the fit, unique within one assessment
     * @param degreesOfFreedom of the fit
     */
    public static List<Known> jointly(
            List<Quantity> values,
            double[][] covariance,
            String fit,
            double degreesOfFreedom,
            Origin origin,
            String from) {
        double[][] factor = cholesky(covariance);
        return java.util.stream.IntStream.range(0, values.size())
                .mapToObj(i -> {
                    TreeMap<Source, Double> parts = new TreeMap<>();
                    for (int k = 0; k <= i; k++) {
                        if (factor[i][k] != 0) {
                            parts.put(new Source(fit + "#" + k, fit, degreesOfFreedom), factor[i][k]);
                        }
                    }
                    return new Known(values.get(i), parts, origin, EnumSet.of(origin), from);
                })
                .toList();
    }

    private static double[][] cholesky(double[][] a) {
        int n = a.length;
        double[][] l = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k <= i; k++) {
                double sum = a[i][k];
                for (int j = 0; j < k; j++) {
                    sum -= l[i][j] * l[k][j];
                }
                if (i == k) {
                    l[i][i] = Math.sqrt(Math.max(sum, 0));
                } else {
                    l[i][k] = l[k][k] == 0 ? 0 : sum / l[k][k];
                }
            }
        }
        return l;
    }
}
