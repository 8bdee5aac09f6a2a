package servowright.engine.bench;

import java.util.List;

/** A run-out as it is plotted: speed, fit and what is left over. */
final class RunOutCurves {
    private static final int MOST_POINTS = 2000;

    private RunOutCurves() {}

    static List<Curve> of(RunOut out) {
        int count = out.trace().count();
        int stride = 1 + count / MOST_POINTS;
        int n = (count + stride - 1) / stride;
        double[] x = new double[n];
        double[] measured = new double[n];
        double[] fitted = new double[n];
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = out.trace().seconds()[i * stride];
            measured[i] = out.trace().values()[i * stride];
            rest[i] = out.best().fit().fit().residuals().at(i * stride);
            fitted[i] = measured[i] - rest[i];
        }
        return List.of(
                new Curve(out.trace().channel(), x, measured, "s", "rpm", Curve.Role.MEASURED),
                new Curve(out.curved() ? "three terms" : "two terms", x, fitted, "s", "rpm", Curve.Role.FITTED),
                new Curve("left over", x, rest, "s", "rpm", Curve.Role.RESIDUAL));
    }
}
