package servowright.engine.numeric;

import java.util.List;
import java.util.Optional;

/**
 * Regression of a signal on an offset, a drift and sines of multiples of one base frequency:
 *
 * <pre>  y(t) = offset + drift t + sum over k of A(k) sin(2 pi k f t + phase(k))</pre>
 *
 * and on one sine more of a frequency of its own, if asked for.
 *
 * <p>The frequency is found by least squares together with all other figures (Gauss-Newton from the strongest line of
 * the spectrum, or for few periods from a scan of fits), not read from a spectral bin. Any number of periods from about
 * 1.5 on will do, whole or not; a search that ends below one period has run away. A signal whose line does not stand out of its own noise (false alarm probability about 1 %,
 * J. D. Scargle, Astrophysical Journal 263, 1982, equation 14, from memory) is NOT_DETERMINED.
 *
 * <p>The covariance starts from the scatter of the residuals. Each term's share is enlarged by the residual spectrum at
 * that term's own frequency ({@link Whiteness#varianceFactorAt}), which matters for filtered or otherwise dependent
 * noise, and by what {@link Rounding} says for samples rounded to a step. A frequency that changes during the record
 * widens the residuals but biases high orders first; cut the record into pieces to see it.
 *
 * @param status CONVERGED, TOO_FEW_OBSERVATIONS, NOT_DETERMINED, ITERATION_LIMIT or RAN_AWAY; figures are an answer
 *     only with CONVERGED
 * @param frequency base frequency f, above 0, cycles per unit of the abscissa
 * @param frequencyStandardError 0 when the frequency was given
 * @param offset at t = 0
 * @param drift change of the offset per unit of the abscissa; 0 when not fitted
 * @param harmonics one per order asked for, in that order
 * @param line the sine of a frequency of its own that was fitted along, if one was asked for; its order is called 1
 * @param covariance of offset, drift, frequency, then for each order, and last for the line, A cos(phase) and A sin(phase); zero for figures
 *     that were not fitted
 * @param residuals sample less fitted value
 * @param residualSd square root of the sum of squares over the degrees of freedom
 * @param degreesOfFreedom samples less fitted figures
 * @param whiteness of the residuals
 * @param effectiveCount number of independent samples that would fix the first harmonic as well
 * @param iterations passes over the samples
 */
public record HarmonicFit(
        FitStatus status,
        double frequency,
        double frequencyStandardError,
        double offset,
        double drift,
        List<Harmonic> harmonics,
        Optional<Harmonic> line,
        Covariance covariance,
        Values residuals,
        double residualSd,
        int degreesOfFreedom,
        Whiteness whiteness,
        double effectiveCount,
        int iterations) {

    public HarmonicFit {
        harmonics = List.copyOf(harmonics);
    }

    /** Samples at an even interval, the first at t = 0. */
    public static HarmonicFit ofSamples(HarmonicTerms terms, double[] samples, double interval) {
        Check.positive("a sample interval", interval);
        return HarmonicSolver.fit(terms, samples, Abscissa.even(samples.length, interval));
    }

    /** Samples with their own times, in rising order and about evenly spaced. */
    public static HarmonicFit overTime(HarmonicTerms terms, double[] times, double[] samples) {
        Check.sameLength("times", samples.length, times.length);
        return HarmonicSolver.fit(terms, samples, Abscissa.listed(times));
    }

    /** Samples with the angle at which each was taken, in radians of the base period; nothing is left to find but linear terms. */
    public static HarmonicFit overAngle(HarmonicTerms terms, double[] angles, double[] samples) {
        Check.sameLength("angles", samples.length, angles.length);
        HarmonicTerms known = terms.atKnownFrequency(1 / (2 * Math.PI));
        return HarmonicSolver.fit(known, samples, Abscissa.listed(angles));
    }

    /** The harmonic of an order that was asked for. */
    public Harmonic harmonic(int order) {
        return harmonics.stream()
                .filter(h -> h.order() == order)
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("order " + order + " was not fitted"));
    }

    /** Degrees of freedom for a coverage factor, with dependent samples counted only as far as they are independent. */
    public double effectiveDegreesOfFreedom() {
        int fitted = residuals.size() - degreesOfFreedom;
        return whiteness.degreesOfFreedom(residuals.size() / effectiveCount, fitted);
    }
}
