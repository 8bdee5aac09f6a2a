package servowright.engine.bench;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.numeric.Harmonic;
import servowright.engine.numeric.HarmonicFit;
import servowright.engine.numeric.HarmonicTerms;

/**
 * A line of the mains in what a fit has left over. Signal and line are then fitted together: a short record mixes them, and
 * what one takes the other lacks.
 *
 * @param hertz     mains frequency
 * @param amplitude peak
 * @param removed   the trace without it
 * @param fit       of signal and line together
 */
record Hum(double hertz, double amplitude, Trace removed, HarmonicFit fit) {
    private static final double[] MAINS_HERTZ = {50, 60};

    /** Standard errors at which a line counts as there. */
    private static final double SIGNIFICANT = 5;

    /** Lines closer than this many cycles over the record cannot be told apart. */
    private static final double RESOLVED_CYCLES = 0.8;

    /** The stronger of the mains lines, if one stands out and can be told from the signal. */
    static Optional<Hum> find(Trace trace, HarmonicFit fit, HarmonicTerms terms) {
        Trace left = trace.with(fit.residuals().toArray());
        return Arrays.stream(MAINS_HERTZ)
                .filter(hertz -> resolved(hertz, fit, trace.spanS(), terms))
                .mapToObj(hertz -> Line.of(hertz, left))
                .filter(Line::standsOut)
                .max(Comparator.comparingDouble(line -> line.fit().harmonic(1).amplitude()))
                .map(line -> along(line.hertz(), trace, fit, terms))
                .filter(hum -> hum.fit().status().converged());
    }

    /** A sine of the mains in a trace. */
    private record Line(double hertz, HarmonicFit fit) {
        static Line of(double hertz, Trace trace) {
            return new Line(hertz, trace.fit(HarmonicTerms.ofOrders(1).atKnownFrequency(hertz)));
        }

        boolean standsOut() {
            Harmonic found = fit.harmonic(1);
            return fit.status().converged() && found.amplitude() >= SIGNIFICANT * found.amplitudeStandardError();
        }
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

    /** Signal and line fitted together, and the line then taken out of the trace. */
    private static Hum along(double hertz, Trace trace, HarmonicFit start, HarmonicTerms terms) {
        HarmonicFit fit = trace.fit(terms.startingAt(start.frequency()).withLine(hertz));
        double[] rest = trace.values().clone();
        double amplitude = fit.line().map(Harmonic::amplitude).orElse(0.0);
        double phase = fit.line().map(Harmonic::phase).orElse(0.0);
        for (int i = 0; i < rest.length; i++) {
            rest[i] -= amplitude * Math.sin(2 * Math.PI * hertz * trace.seconds()[i] + phase);
        }
        return new Hum(hertz, amplitude, trace.with(rest), fit);
    }
}
