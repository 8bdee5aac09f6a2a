package servowright.engine.numeric;

import java.util.Arrays;

/** Means of samples taken at angles, in evenly spaced parts of one turn, and the orders of such means. */
public final class TurnMeans {
    private TurnMeans() {}

    /**
     * Gathers samples; angles may run over several turns. A part without a sample is not a number.
     *
     * @param rows which samples to take
     */
    public static double[] of(double[] angles, double[] samples, int[] rows, int parts) {
        Check.that(parts >= 1, "a turn needs at least one part, was ", parts);
        double[] sums = new double[parts];
        int[] counts = new int[parts];
        for (int i : rows) {
            int part = part(angles[i], parts);
            sums[part] += samples[i];
            counts[part]++;
        }
        for (int k = 0; k < parts; k++) {
            sums[k] = counts[k] == 0 ? Double.NaN : sums[k] / counts[k];
        }
        return sums;
    }

    /** The part of the turn that an angle falls into. */
    public static int part(double angle, int parts) {
        double turns = angle / (2 * Math.PI);
        return Math.min(parts - 1, (int) ((turns - Math.floor(turns)) * parts));
    }

    /** Share of the parts that hold a number. */
    public static double filled(double... means) {
        return Arrays.stream(means).filter(m -> !Double.isNaN(m)).count() / (double) means.length;
    }

    /** Angle in the middle of a part. */
    public static double middle(int part, int parts) {
        return (part + 0.5) * 2 * Math.PI / parts;
    }

    /**
     * Amplitude of each order from 1 to {@code highest} at its own index, with gaps bridged by straight lines and the smoothing
     * by the parts undone; index 0 is 0.
     */
    public static double[] amplitudes(double[] means, int highest) {
        double[] whole = bridged(means);
        int n = whole.length;
        double[] cosines = new double[n];
        double[] sines = new double[n];
        for (int k = 0; k < n; k++) {
            cosines[k] = Math.cos(2 * Math.PI * k / n);
            sines[k] = Math.sin(2 * Math.PI * k / n);
        }
        double[] amplitudes = new double[highest + 1];
        for (int order = 1; order <= highest; order++) {
            double real = 0;
            double imaginary = 0;
            for (int k = 0; k < n; k++) {
                int at = (int) ((long) order * k % n);
                real += whole[k] * cosines[at];
                imaginary += whole[k] * sines[at];
            }
            amplitudes[order] = 2 * Math.hypot(real, imaginary) / n / smoothing(order, n);
        }
        return amplitudes;
    }

    /** What is left of an order after means over parts were taken: sin x / x with x = π order / parts. */
    public static double smoothing(int order, int parts) {
        double x = Math.PI * order / parts;
        return x == 0 ? 1 : Math.sin(x) / x;
    }

    private static double[] bridged(double... means) {
        int n = means.length;
        double[] whole = means.clone();
        for (int k = 0; k < n; k++) {
            if (Double.isNaN(means[k])) {
                int before = toNumber(means, k, -1);
                int after = toNumber(means, k, 1);
                whole[k] = (means[Math.floorMod(k - before, n)] * after + means[(k + after) % n] * before)
                        / (before + after);
            }
        }
        return whole;
    }

    private static int toNumber(double[] means, int from, int step) {
        int n = means.length;
        int away = 1;
        while (away < n && Double.isNaN(means[Math.floorMod(from + step * away, n)])) {
            away++;
        }
        return away;
    }
}
