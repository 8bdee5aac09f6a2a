package servowright.engine.numeric;

import java.util.ArrayList;
import java.util.List;

/**
 * Weighted means of sampled signals over short stretches that overlap by half, and the means of their derivatives, without
 * taking differences of noisy samples.
 *
 * <p><b>Formula.</b> Weight φ(t) = sin²(π (t − t₀)/T) over a stretch of length T; mean of s is ∫φ s dt / ∫φ dt, mean of its
 * derivative ∫φ ds / ∫φ dt. Both are sums over the intervals with φ in their middle, so that they are exact for straight lines;
 * since φ rises from 0 and returns to it, the differences of neighbours add up to φ' and noise is not blown up. A linear
 * differential equation between signals holds between these means, to the order of the trapezoidal rule. <b>Valid for</b> rising times, any spacing;
 * stretches with an interval above three times the usual one are left out. <b>Source.</b> M. Shinbrot, "On the analysis of
 * linear and nonlinear systems", Transactions of the ASME 79 (1957), method functions (recalled).
 */
public final class SmoothWindows {
    private static final double GAP = 3;
    private static final int LEAST = 8;

    private final double[] times;
    private final int samples;
    private final List<Integer> starts = new ArrayList<>();

    private SmoothWindows(double[] times, int samples) {
        this.times = times;
        this.samples = samples;
    }

    /**
     * Windows over rising times.
     *
     * @param samples in a window, at least 8
     */
    public static SmoothWindows over(double[] times, int samples) {
        Check.that(samples >= LEAST, "a window needs at least " + LEAST + " samples, was ", samples);
        SmoothWindows windows = new SmoothWindows(times.clone(), samples);
        double usual = times.length < 2 ? 0 : (times[times.length - 1] - times[0]) / (times.length - 1);
        for (int from = 0; from + samples <= times.length; from += samples / 2) {
            if (!gap(times, from, from + samples, usual)) {
                windows.starts.add(from);
            }
        }
        return windows;
    }

    private static boolean gap(double[] times, int from, int to, double usual) {
        for (int i = from + 1; i < to; i++) {
            if (times[i] - times[i - 1] > GAP * usual) {
                return true;
            }
        }
        return false;
    }

    public int count() {
        return starts.size();
    }

    /** Time in the middle of each window. */
    public double[] middles() {
        return starts.stream()
                .mapToDouble(s -> (times[s] + times[s + samples - 1]) / 2)
                .toArray();
    }

    /** Mean of a signal over each window. */
    public double[] means(double[] signal) {
        return integrals(signal, false);
    }

    /** Mean of the signal's derivative over each window. */
    public double[] slopes(double[] signal) {
        return integrals(signal, true);
    }

    /** Smallest size of the signal in each window; 0 where it changes its sign. */
    public double[] leastSizes(double[] signal) {
        Check.sameLength("a signal", times.length, signal.length);
        double[] least = new double[starts.size()];
        for (int k = 0; k < least.length; k++) {
            double size = Double.POSITIVE_INFINITY;
            double first = signal[starts.get(k)];
            for (int i = starts.get(k); i < starts.get(k) + samples; i++) {
                size = signal[i] * first <= 0 ? 0 : Math.min(size, Math.abs(signal[i]));
            }
            least[k] = size;
        }
        return least;
    }

    /** Variance of a window mean over the variance of a sample, for noise without memory. */
    public double noiseShare() {
        double sum = 0;
        double squares = 0;
        for (int i = 0; i < samples; i++) {
            double weight = weight((double) i / (samples - 1));
            sum += weight;
            squares += weight * weight;
        }
        return squares / (sum * sum);
    }

    /** φ at a share of the window. */
    private static double weight(double share) {
        double sine = Math.sin(Math.PI * share);
        return sine * sine;
    }

    private double[] integrals(double[] signal, boolean derivative) {
        Check.sameLength("a signal", times.length, signal.length);
        double[] result = new double[starts.size()];
        for (int k = 0; k < result.length; k++) {
            int from = starts.get(k);
            int last = from + samples - 1;
            double length = times[last] - times[from];
            double area = 0;
            double sum = 0;
            for (int i = from; i < last; i++) {
                double step = times[i + 1] - times[i];
                double weight = weight(((times[i] + times[i + 1]) / 2 - times[from]) / length);
                area += weight * step;
                sum += weight * (derivative ? signal[i + 1] - signal[i] : (signal[i] + signal[i + 1]) / 2 * step);
            }
            result[k] = sum / area;
        }
        return result;
    }
}
