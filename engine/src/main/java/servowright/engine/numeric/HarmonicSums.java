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
