package servowright.engine.numeric;

import java.util.OptionalDouble;

/** A first base frequency for {@link HarmonicSolver}. */
final class HarmonicStart {
    /** Below this many cycles a spectral line is blurred by the offset and by its own mirror image. */
    private static final double FEW_CYCLES = 8;

    private static final double LEAST_CYCLES = 0.9;
    private static final double CYCLE_STEP = 0.05;
    private static final int ENOUGH_SAMPLES = 256;

    private HarmonicStart() {}

    static OptionalDouble frequency(HarmonicTerms terms, double[] samples, Abscissa abscissa) {
        double interval = abscissa.meanInterval();
        if (!(interval > 0)) {
            return OptionalDouble.empty();
        }
        OptionalDouble peak = Spectrum.peakFrequency(samples, interval);
        double span = 2 * abscissa.halfSpan();
        if (peak.isPresent() && peak.getAsDouble() * span < FEW_CYCLES) {
            OptionalDouble cycles = scan(terms, averaged(samples));
            return cycles.isPresent() ? OptionalDouble.of(cycles.getAsDouble() / span) : cycles;
        }
        OptionalDouble first = OptionalDouble.empty();
        if (peak.isPresent()) {
            first = OptionalDouble.of(peak.getAsDouble() / terms.orders().get(0));
        }
        return first;
    }

    /** Number of cycles over the record at which an offset, a drift if asked for, and one sine fit best. */
    private static OptionalDouble scan(HarmonicTerms terms, double[] samples) {
        HarmonicTerms one = terms.firstOrder();
        HarmonicPass pass = new HarmonicPass(one, samples, Abscissa.even(samples.length, 1.0 / (samples.length - 1)));
        double[] zero = new double[pass.linear()];
        double best = Double.NEGATIVE_INFINITY;
        OptionalDouble found = OptionalDouble.empty();
        double most = Math.min(FEW_CYCLES + 1, 0.5 * samples.length);
        for (double cycles = LEAST_CYCLES; cycles < most; cycles += CYCLE_STEP) {
            GivenUp.check();
            double base = cycles / one.highestOrder();
            double gain = pass.step(2 * Math.PI * base, zero, false)
                    .map(HarmonicPass.Step::gain)
                    .orElse(Double.NEGATIVE_INFINITY);
            if (gain > best) {
                best = gain;
                found = OptionalDouble.of(base);
            }
        }
        return found;
    }

    /** Neighbours averaged until few enough samples are left. */
    private static double[] averaged(double[] samples) {
        int group = 1 + (samples.length - 1) / ENOUGH_SAMPLES;
        double[] averaged = new double[samples.length / group];
        for (int i = 0; i < averaged.length; i++) {
            for (int k = 0; k < group; k++) {
                averaged[i] += samples[i * group + k] / group;
            }
        }
        return averaged;
    }
}
