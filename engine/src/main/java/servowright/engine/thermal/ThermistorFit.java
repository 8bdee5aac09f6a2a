package servowright.engine.thermal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Require;

/**
 * An exponential thermistor curve through temperatures and resistances read together.
 *
 * <p><b>Formula.</b> ln R = ln R₂₅ + β (1/T − 1/298.15 K), a straight line, through the means over twenty-four equal parts of the range of temperature: what
 * was read at one temperature counts once, however long one stayed there, since the error of a reading that lags or of a block that is not one temperature does
 * not average away in time. The scatter of the means gives the uncertainty. <b>Valid for</b> three or more parts with readings, over some tens of
 * kelvin. <b>Source.</b> {@link Thermistor}, linear least squares.
 *
 * @param fit    ln R₂₅ and β
 * @param kelvin mean temperature of each part
 * @param ln     mean logarithm of resistance of each part
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: means of one calibration
public record ThermistorFit(LinearFit fit, double[] kelvin, double[] ln) {
    private static final int PARTS = 24;
    private static final int FEWEST = 4;

    /** Fits readings; empty when they do not determine the curve. */
    public static Optional<ThermistorFit> of(double[] kelvin, double[] ohm) {
        Require.atLeast("readings", 1, kelvin.length);
        double least = Arrays.stream(kelvin).min().orElseThrow();
        double most = Arrays.stream(kelvin).max().orElseThrow();
        if (!(most > least)) {
            return Optional.empty();
        }
        double[] count = new double[PARTS];
        double[] inverse = new double[PARTS];
        double[] ln = new double[PARTS];
        for (int i = 0; i < kelvin.length; i++) {
            int part = (int) Math.min(PARTS - 1, PARTS * (kelvin[i] - least) / (most - least));
            count[part]++;
            inverse[part] += 1 / kelvin[i];
            ln[part] += Math.log(ohm[i]);
        }
        List<Integer> filled = new ArrayList<>();
        for (int k = 0; k < PARTS; k++) {
            if (count[k] > 0) {
                filled.add(k);
            }
        }
        if (filled.size() < FEWEST) {
            return Optional.empty();
        }
        double[] x = filled.stream()
                .mapToDouble(k -> inverse[k] / count[k] - 1 / Thermistor.REFERENCE_KELVIN)
                .toArray();
        double[] y = filled.stream().mapToDouble(k -> ln[k] / count[k]).toArray();
        LinearFit fit = LinearFit.of(Design.line(x), y);
        if (!fit.status().converged()) {
            return Optional.empty();
        }
        double[] middles = Arrays.stream(x)
                .map(v -> 1 / (v + 1 / Thermistor.REFERENCE_KELVIN))
                .toArray();
        return Optional.of(new ThermistorFit(fit, middles, y));
    }

    /** R₂₅, ohm. */
    public double ohmAt25() {
        return Math.exp(fit.parameter(0));
    }

    /** β, K. */
    public double betaKelvin() {
        return fit.parameter(1);
    }

    /** Standard uncertainty of a temperature that the curve gives, at that temperature, K. */
    public double standardKelvin(double kelvin) {
        double x = 1 / Require.positive("temperature", kelvin, "K") - 1 / Thermistor.REFERENCE_KELVIN;
        return fit.standardErrorAt(1, x) * kelvin * kelvin / betaKelvin();
    }

    /** The curve. */
    public Thermistor curve() {
        return Thermistor.exponential(ohmAt25(), betaKelvin());
    }
}
