package servowright.engine.numeric;

import java.util.Arrays;

/**
 * Sums of the cosines and sines of all multiples of one phase. The product of two sines is half the sum and half the
 * difference of two others, so these few sums hold every product that the normal equations of a harmonic fit need.
 */
final class HarmonicSums {
    private final double[] cosines;
    private final double[] sines;

    /** For multiples up to {@code highest}. */
    HarmonicSums(int highest) {
        this.cosines = new double[highest + 1];
        this.sines = new double[highest + 1];
    }

    /**
     * Of {@code count} evenly spaced phases about 0, {@code step} radians apart: the sines cancel, and the cosines of the
     * multiple m add up to <pre>  sin(count m step / 2) / sin(m step / 2)</pre> (Dirichlet's kernel).
     */
    static HarmonicSums even(int highest, double step, int count) {
        HarmonicSums sums = new HarmonicSums(highest);
        for (int multiple = 0; multiple <= highest; multiple++) {
            sums.cosines[multiple] = kernel(0.5 * multiple * step, count);
        }
        return sums;
    }

    private static double kernel(double half, int count) {
        double rest = Math.IEEEremainder(half, Math.PI);
        boolean odd = Math.rint((half - rest) / Math.PI) % 2 != 0;
        double sign = odd && count % 2 == 0 ? -1 : 1;
        double sine = Math.sin(rest);
        return sine == 0 ? sign * count : sign * Math.sin(count * rest) / sine;
    }

    /** Adds samples by the cosine and sine of their phase. */
    void add(double[] cosine, double[] sine, int length) {
        double[] c = new double[length];
        double[] s = new double[length];
        Arrays.fill(c, 1);
        cosines[0] += length;
        for (int multiple = 1; multiple < cosines.length; multiple++) {
            double cosineSum = 0;
            double sineSum = 0;
            for (int i = 0; i < length; i++) {
                double next = c[i] * cosine[i] - s[i] * sine[i];
                s[i] = s[i] * cosine[i] + c[i] * sine[i];
                c[i] = next;
                cosineSum += next;
                sineSum += s[i];
            }
            cosines[multiple] += cosineSum;
            sines[multiple] += sineSum;
        }
    }

    double cosine(int multiple) {
        return cosines[multiple];
    }

    double sine(int multiple) {
        return sines[multiple];
    }
}
