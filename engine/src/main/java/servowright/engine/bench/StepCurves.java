package servowright.engine.bench;

import java.util.List;

/** What to plot of a step: the samples, the exponential, and what is left. */
final class StepCurves {
    private static final int MOST_POINTS = 600;

    private StepCurves() {}

    static void add(ResultSheet sheet, Trace current, List<StepFit> fits) {
        StepFit fit = fits.get(0);
        int stride = 1 + fit.amps().length / MOST_POINTS;
        int n = (fit.amps().length + stride - 1) / stride;
        double[] x = new double[n];
        double[] measured = new double[n];
        double[] fitted = new double[n];
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            x[i] = fit.seconds()[i * stride];
            measured[i] = fit.amps()[i * stride];
            rest[i] = fit.residuals()[i * stride];
            fitted[i] = measured[i] - rest[i];
        }
        sheet.curves(List.of(
                new Curve(current.channel(), x, measured, "ms", "", Curve.Role.MEASURED),
                new Curve("exponential", x, fitted, "ms", "", Curve.Role.FITTED),
                new Curve("left over", x, rest, "ms", "", Curve.Role.RESIDUAL)));
    }
}
