package servowright.engine.numeric;

import java.util.OptionalDouble;

/** The periodogram of evenly spaced samples, of any number. */
public final class Spectrum {
    private Spectrum() {}

    /**
     * Frequency of the strongest line, in cycles per unit of the interval: a start value, good to about a tenth of one
     * cycle over the record when there are several cycles.
     *
     * <p>The mean and a straight line are taken out, the ends tapered (Hann), zeros appended to a power of two, and the
     * peak placed by a parabola through the logarithms of three lines. Empty for fewer than 4 samples or when nothing is
     * left to see.
     */
    public static OptionalDouble peakFrequency(double[] samples, double interval) {
        Check.positive("a sample interval", interval);
        Check.finite("samples", samples);
        int n = samples.length;
        if (n < 4) {
            return OptionalDouble.empty();
        }
        int size = Integer.highestOneBit(n - 1) << 1;
        double[] real = tapered(samples, size);
        double[] imaginary = new double[size];
        transform(real, imaginary);
        int best = 0;
        double bestPower = 0;
        for (int k = 1; k < size / 2; k++) {
            double power = power(real, imaginary, k);
            if (power > bestPower) {
                bestPower = power;
                best = k;
            }
        }
        if (best == 0) {
            return OptionalDouble.empty();
        }
        double below = Math.log(power(real, imaginary, best - 1) + Double.MIN_NORMAL);
        double above = Math.log(power(real, imaginary, best + 1) + Double.MIN_NORMAL);
        double curve = below + above - 2 * Math.log(bestPower);
        double shift = curve < 0 ? 0.5 * (below - above) / curve : 0;
        return OptionalDouble.of((best + Math.max(-0.5, Math.min(0.5, shift))) / (size * interval));
    }

    private static double[] tapered(double[] samples, int size) {
        int n = samples.length;
        double centre = 0.5 * (n - 1);
        double mean = 0;
        double slope = 0;
        double largest = 0;
        for (int i = 0; i < n; i++) {
            mean += samples[i] / n;
            slope += samples[i] * (i - centre);
            largest = Math.max(largest, Math.abs(samples[i]));
        }
        slope *= 12 / ((double) n * ((double) n * n - 1));
        double[] tapered = new double[size];
        double noise = 8 * Math.ulp(largest);
        boolean flat = true;
        for (int i = 0; i < n; i++) {
            double rest = samples[i] - mean - slope * (i - centre);
            flat &= Math.abs(rest) <= noise;
            tapered[i] = rest * (0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 0.5) / n));
        }
        return flat ? new double[size] : tapered;
    }

    private static double power(double[] real, double[] imaginary, int k) {
        return real[k] * real[k] + imaginary[k] * imaginary[k];
    }

    /** Fast Fourier transform in place, length a power of two: J. W. Cooley, J. W. Tukey, Math. Comp. 19 (1965). */
    static void transform(double[] real, double[] imaginary) {
        int size = real.length;
        reverseBits(real, imaginary);
        double[] cosine = new double[size / 2];
        double[] sine = new double[size / 2];
        for (int k = 0; k < size / 2; k++) {
            cosine[k] = Math.cos(2 * Math.PI * k / size);
            sine[k] = -Math.sin(2 * Math.PI * k / size);
        }
        for (int half = 1; half < size; half *= 2) {
            int stride = size / (2 * half);
            for (int start = 0; start < size; start += 2 * half) {
                for (int k = 0; k < half; k++) {
                    butterfly(real, imaginary, start + k, start + k + half, cosine[k * stride], sine[k * stride]);
                }
            }
        }
    }

    private static void butterfly(double[] real, double[] imaginary, int a, int b, double c, double s) {
        double re = real[b] * c - imaginary[b] * s;
        double im = real[b] * s + imaginary[b] * c;
        real[b] = real[a] - re;
        imaginary[b] = imaginary[a] - im;
        real[a] += re;
        imaginary[a] += im;
    }

    private static void reverseBits(double[] real, double[] imaginary) {
        int shift = 32 - Integer.numberOfTrailingZeros(real.length);
        for (int i = 0; i < real.length; i++) {
            int j = Integer.reverse(i) >>> shift;
            if (j > i) {
                double keep = real[i];
                real[i] = real[j];
                real[j] = keep;
                keep = imaginary[i];
                imaginary[i] = imaginary[j];
                imaginary[j] = keep;
            }
        }
    }
}
