package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.IntStream;

/** Points with their fit as they are plotted: readings, fit and what is left over against what was set. */
final class PointCurves {
    private static final int MOST_POINTS = 2000;

    /** Points of a curve drawn through a few readings. */
    private static final int DRAWN = 120;

    private PointCurves() {}

    /**
     * The three curves.
     *
     * @param name      of what followed
     * @param fit       of the fit
     * @param residuals observed less fitted
     */
    static List<Curve> of(
            String name, String fit, double[] x, double[] y, double[] residuals, String xUnit, String yUnit) {
        int stride = 1 + x.length / MOST_POINTS;
        int n = (x.length + stride - 1) / stride;
        double[] shown = new double[n];
        double[] measured = new double[n];
        double[] fitted = new double[n];
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            shown[i] = x[i * stride];
            measured[i] = y[i * stride];
            rest[i] = residuals[i * stride];
            fitted[i] = measured[i] - rest[i];
        }
        return List.of(
                new Curve(name, shown, measured, xUnit, yUnit, Curve.Role.MEASURED),
                new Curve(fit, shown, fitted, xUnit, yUnit, Curve.Role.FITTED),
                new Curve("left over", shown, rest, xUnit, yUnit, Curve.Role.RESIDUAL));
    }

    /**
     * A few readings, with their fit as the smooth curve it is.
     *
     * @param curve fitted value at an abscissa
     */
    static List<Curve> smooth(
            String name, String fit, double[] x, double[] y, DoubleUnaryOperator curve, String xUnit, String yUnit) {
        double from = Arrays.stream(x).min().orElse(0);
        double to = Arrays.stream(x).max().orElse(0);
        double[] at = IntStream.rangeClosed(0, DRAWN)
                .mapToDouble(k -> from + (to - from) * k / DRAWN)
                .toArray();
        double[] rest = IntStream.range(0, x.length)
                .mapToDouble(k -> y[k] - curve.applyAsDouble(x[k]))
                .toArray();
        return List.of(
                new Curve(name, x, y, xUnit, yUnit, Curve.Role.MEASURED),
                new Curve(fit, at, Arrays.stream(at).map(curve).toArray(), xUnit, yUnit, Curve.Role.FITTED),
                new Curve("left over", x, rest, xUnit, yUnit, Curve.Role.RESIDUAL));
    }
}
