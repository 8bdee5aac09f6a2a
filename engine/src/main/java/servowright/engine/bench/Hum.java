package servowright.engine.bench;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;

/**
 * A line of the mains in what a fit has left over.
 *
 * @param hertz     mains frequency
 * @param amplitude peak
 * @param removed   the trace without it
 * @param fit       of that trace
 */
record Hum(double hertz, double amplitude, Trace removed, HarmonicFit fit) {
    private static final double[] MAINS_HERTZ = {50, 60};

    /** Standard errors at which a line counts as there. */
    private static final double SIGNIFICANT = 5;

    /** Lines closer than this many cycles over the record cannot be told apart. */
    private static final double RESOLVED_CYCLES = 0.8;

    private static final int ROUNDS = 4;

    /** A line that changes by less than this share of its standard error takes no more from the signal. */
    private static final double SETTLED = 0.1;

    /** The stronger of the mains lines, if one stands out and can be told from the signal. */
    static Optional<Hum> find(Trace trace, HarmonicFit fit, HarmonicTerms terms) {
        Optional<Hum> strongest = Optional.empty();
        for (double hertz : MAINS_HERTZ) {
            if (resolved(hertz, fit, trace.spanS(), terms)) {
                Optional<Hum> hum = at(hertz, trace, fit, terms);
                if (hum.isPresent() && (strongest.isEmpty() || hum.get().amplitude > strongest.get().amplitude)) {
                    strongest = hum;
                }
            }
        }
        return strongest;
    }

    /** Whether a mains line, if there was one, could hide under the fundamental. */
    static boolean couldHide(double hertz, double spanS) {
        return Arrays.stream(MAINS_HERTZ).anyMatch(m -> Math.abs(m - hertz) * spanS < RESOLVED_CYCLES);
    }

    private static boolean resolved(double hertz, HarmonicFit fit, double spanS, HarmonicTerms terms) {
        List<Integer> orders = terms.orders();
        return hertz * spanS > RESOLVED_CYCLES
                && orders.stream().allMatch(k -> Math.abs(hertz - k * fit.frequency()) * spanS > RESOLVED_CYCLES);
    }

    private static Optional<Hum> at(double hertz, Trace trace, HarmonicFit fit, HarmonicTerms terms) {
        HarmonicTerms line = HarmonicTerms.ofOrders(1).atKnownFrequency(hertz);
        HarmonicFit first = trace.with(fit.residuals().toArray()).fit(line);
        if (!first.status().converged()) {
            return Optional.empty();
        }
        Harmonic found = first.harmonic(1);
        if (found.amplitude() < SIGNIFICANT * found.amplitudeStandardError()) {
            return Optional.empty();
        }
        return Optional.of(alternating(hertz, trace, fit, terms, line));
    }

    /** Fits signal and line in turn until neither takes from the other. */
    private static Hum alternating(
            double hertz, Trace trace, HarmonicFit start, HarmonicTerms terms, HarmonicTerms line) {
        Trace without = trace;
        HarmonicFit fit = start;
        double amplitude = 0;
        double[] hum = new double[trace.count()];
        for (int round = 0; round < ROUNDS && fit.status().converged(); round++) {
            double[] left = fit.residuals().toArray();
            for (int i = 0; i < left.length; i++) {
                left[i] += hum[i];
            }
            HarmonicFit found = trace.with(left).fit(line);
            Harmonic now = found.harmonic(1);
            boolean settled = Math.abs(now.amplitude() - amplitude) < SETTLED * now.amplitudeStandardError();
            if (round > 0 && settled) {
                break;
            }
            amplitude = now.amplitude();
            double[] rest = trace.values().clone();
            for (int i = 0; i < rest.length; i++) {
                hum[i] = left[i] - found.residuals().at(i) - found.offset();
                rest[i] -= hum[i];
            }
            without = trace.with(rest);
            fit = without.fit(terms.startingAt(fit.frequency()));
        }
        return new Hum(hertz, amplitude, without, fit);
    }
}
