package servowright.engine.encoder;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import servowright.engine.numeric.LinearFit;
import servowright.engine.quantity.Require;

/**
 * Angle error against a reference that tells where the shaft is.
 *
 * <p><b>Formula.</b> ε_i = θ_read − θ_ref = c0 + Σ (c_k cos kθ + s_k sin kθ) by least squares, never by averages of samples
 * evenly spaced in time, which would favour where the shaft was slow. <b>Validity.</b> Refused above a condition number of
 * {@value #MOST_CONDITION}: with four orders that is a travel of about 280°. Joints of less travel get fewer orders or no
 * fit, for offset and first harmonic look alike there.
 */
public final class ReferencedFit {
    /** Condition number above which coefficients trade against one another. */
    public static final double MOST_CONDITION = 10;

    private static final int SAMPLES_PER_PARAMETER = 3;

    private ReferencedFit() {}

    /**
     * Fits harmonics up to an order and keeps those that stand out.
     *
     * @param referenceRad true angles, in any order, whole turns do not matter
     * @param readRad what the sensor read at each
     * @param orders highest order tried
     */
    public static Calibration of(double[] referenceRad, double[] readRad, int orders) {
        return of(referenceRad, readRad, ones(referenceRad.length), orders);
    }

    /**
     * The same with samples that are not equally good.
     *
     * @param sigma standard deviation of each, up to a common factor; {@link #evening} makes slow places count no more
     *     than fast ones
     */
    public static Calibration of(double[] referenceRad, double[] readRad, double[] sigma, int orders) {
        Require.atLeast("highest order", 1, orders);
        int needed = SAMPLES_PER_PARAMETER * (2 * orders + 1);
        if (referenceRad.length < needed) {
            return new Calibration.Refused(Calibration.Reason.TOO_FEW_SAMPLES, referenceRad.length);
        }
        double[] error = errors(referenceRad, readRad);
        HarmonicRegression regression = new HarmonicRegression(new double[][] {ones(error.length)}, error, sigma);
        HarmonicRegression.Found all = regression.with(upTo(orders), referenceRad);
        if (!(all.fit().conditionNumber() < MOST_CONDITION)) {
            return new Calibration.Refused(
                    Calibration.Reason.TRAVEL_TOO_SMALL, all.fit().conditionNumber());
        }
        HarmonicRegression.Found kept = regression.pruned(all, referenceRad);
        return fitted(kept, all.fit().conditionNumber(), 0, 0, kept.fit().parameter(0));
    }

    /** Errors about their own mean direction, so that an offset near half a turn does not wrap. */
    private static double[] errors(double[] referenceRad, double[] readRad) {
        double[] difference = IntStream.range(0, referenceRad.length)
                .mapToDouble(i -> readRad[i] - referenceRad[i])
                .toArray();
        double middle = Angles.mean(difference);
        return Arrays.stream(difference)
                .map(d -> middle + Angles.wrapped(d - middle))
                .toArray();
    }

    static Calibration.Fitted fitted(
            HarmonicRegression.Found found, double condition, int polynomialOrder, double lagRad, double meanRad) {
        LinearFit fit = found.fit();
        return new Calibration.Fitted(
                new HarmonicError(meanRad, found.ripples()),
                found.amplitudeError(),
                lagRad,
                fit.residuals(),
                fit.residualSd(),
                fit.whiteness(),
                condition,
                polynomialOrder);
    }

    /** Weights, as relative standard deviations, under which every part of the turn counts alike. */
    public static double[] evening(double[] referenceRad, int bins) {
        Require.atLeast("number of bins", 4, bins);
        int[] counted = new int[bins];
        for (double angle : referenceRad) {
            counted[bin(angle, bins)]++;
        }
        return Arrays.stream(referenceRad)
                .map(a -> Math.sqrt(counted[bin(a, bins)]))
                .toArray();
    }

    private static int bin(double rad, int bins) {
        double turn = rad / (2 * Math.PI);
        return Math.min(bins - 1, (int) ((turn - Math.floor(turn)) * bins));
    }

    static List<Integer> upTo(int orders) {
        return IntStream.rangeClosed(1, orders).boxed().toList();
    }

    static double[] ones(int count) {
        double[] ones = new double[count];
        Arrays.fill(ones, 1);
        return ones;
    }
}
