package servowright.engine.bench;

import java.util.List;

/** Points with their fit as they are plotted: readings, fit and what is left over against what was set. */
final class PointCurves {
    private static final int MOST_POINTS = 2000;

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
}
