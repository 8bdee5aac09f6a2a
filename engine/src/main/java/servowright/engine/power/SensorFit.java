package servowright.engine.power;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Covariance;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Require;

/**
 * Offsets and relative gains of phase-current sensors, from currents recorded together while a motor turns.
 *
 * <p><b>Formula.</b> Offset of each: its mean over whole electrical turns. Three sensors on an isolated star: the true currents add
 * to nothing, so m_a = −(g_a/g_b) m_b − (g_a/g_c) m_c + const, fitted by least squares. Two sensors: ratio of the root mean squares about the
 * means, which takes the motor for symmetric. Uncertainty from stretches left out. <b>Valid for</b> noise well below the currents; noise of share q of the variance
 * makes the slopes too small by 2 q, which is taken off. <b>Source.</b> Kirchhoff's current law, least squares, derived.
 *
 * @param offsets   of each sensor, A
 * @param offsetStandard their standard deviations
 * @param gains     of each sensor over that of the first; 1 for the first
 * @param gainStandard their standard deviations; 0 for the first
 * @param freedom   degrees of freedom of all of them
 * @param sumRmsAmp root mean square of the sum of three sensors about its mean; 0 for two
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: the fit of one recording
public record SensorFit(
        double[] offsets,
        double[] offsetStandard,
        double[] gains,
        double[] gainStandard,
        double freedom,
        double sumRmsAmp) {
    private static final int STRETCHES = 16;

    /** How well the noise is known that the slopes were corrected for, as a share of the correction (own choice). */
    private static final double SHADOW_UNSURE = 0.25;

    /**
     * Fits two or three currents of the same times; empty where they do not vary enough.
     *
     * @param electricalRad angle of each sample, so that the current itself does not count as scatter of its mean; empty where it is not known
     */
    public static Optional<SensorFit> of(double[] electricalRad, double[]... amp) {
        Require.within("sensors", 2, 3, amp.length, "");
        int n = amp.length;
        double[] offsets = new double[n];
        double[] offsetStandard = new double[n];
        double[] ones = new double[amp[0].length];
        Arrays.fill(ones, 1);
        for (int k = 0; k < n; k++) {
            Optional<BlockJackknife> mean = BlockJackknife.of(turning(ones, electricalRad), amp[k], STRETCHES);
            if (mean.isEmpty()) {
                return Optional.empty();
            }
            offsets[k] = mean.get().parameter(0);
            offsetStandard[k] = mean.get().standardError(0);
        }
        double[] gains = new double[n];
        double[] gainStandard = new double[n];
        Arrays.fill(gains, 1);
        boolean found = n == 3 ? bySum(ones, amp, gains, gainStandard) : bySize(amp, gains, gainStandard);
        return found
                ? Optional.of(new SensorFit(
                        offsets, offsetStandard, gains, gainStandard, STRETCHES - 1.0, n == 3 ? sum(amp) : 0))
                : Optional.empty();
    }

    private static Design turning(double[] ones, double[] electricalRad) {
        return electricalRad.length == 0
                ? Design.ofColumns(ones)
                : Design.ofColumns(
                        ones,
                        Arrays.stream(electricalRad).map(Math::cos).toArray(),
                        Arrays.stream(electricalRad).map(Math::sin).toArray());
    }

    private static boolean bySum(double[] ones, double[][] amp, double[] gains, double[] standard) {
        Optional<BlockJackknife> fit = BlockJackknife.of(Design.ofColumns(amp[1], amp[2], ones), amp[0], STRETCHES);
        if (fit.isEmpty() || !(fit.get().parameter(0) < 0) || !(fit.get().parameter(1) < 0)) {
            return false;
        }
        Covariance covariance = fit.get().covariance();
        double noise = fit.get().fit().residualSd() * fit.get().fit().residualSd() / 3;
        for (int k = 1; k < 3; k++) {
            // Two of three phases correlate by -1/2, so that their sum has half the variance of each.
            double shadow = 2 * noise / Statistics.variance(amp[k]);
            double slope = fit.get().parameter(k - 1);
            gains[k] = -(1 - shadow) / slope;
            standard[k] = Math.hypot(
                    covariance.standardDeviation(k - 1) / (slope * slope), gains[k] * shadow * SHADOW_UNSURE);
        }
        return true;
    }

    /** Ratios of sizes in each stretch: their mean, and its standard error. */
    private static boolean bySize(double[][] amp, double[] gains, double[] standard) {
        int count = amp[0].length;
        double[] ratios = new double[STRETCHES];
        for (int b = 0; b < STRETCHES; b++) {
            int from = (int) ((long) count * b / STRETCHES);
            int to = (int) ((long) count * (b + 1) / STRETCHES);
            double first = Statistics.standardDeviation(Arrays.copyOfRange(amp[0], from, to));
            ratios[b] = Statistics.standardDeviation(Arrays.copyOfRange(amp[1], from, to)) / first;
        }
        gains[1] = Statistics.mean(ratios);
        standard[1] = Statistics.standardError(ratios);
        return Double.isFinite(gains[1]) && gains[1] > 0;
    }

    private static double sum(double[]... amp) {
        double[] sums = new double[amp[0].length];
        for (double[] one : amp) {
            for (int i = 0; i < sums.length; i++) {
                sums[i] += one[i];
            }
        }
        return Statistics.standardDeviation(sums);
    }
}
