package servowright.engine.recording;

import java.util.Arrays;
import java.util.Optional;

/**
 * A signal that stands at its highest or lowest value again and again, as one does that runs out of the range of its
 * instrument.
 *
 * @param level the value it stands at
 * @param count samples at that value
 * @param first row of the first stretch at that value, from 0
 */
public record Saturation(double level, long count, int first) {
    /** A stretch at the limit has at least this many samples. */
    private static final int STRETCH = 4;

    private static final int STRETCHES = 2;

    /** Signals with fewer levels than this are states, not waves. */
    private static final int LEVELS = 32;

    /** Above this share of all samples the level is where the signal rests, not where it is cut off. */
    private static final double RESTING = 0.3;

    /** The upper or lower limit that {@code samples} run into, if they do; an extreme of exactly 0 is a rest. */
    public static Optional<Saturation> find(double[] samples) {
        Spread spread = Spread.of(samples);
        if (spread.numbers() == 0 || spread.least() == spread.most()) {
            return Optional.empty();
        }
        Optional<Saturation> upper = at(samples, spread.most(), spread);
        return upper.isPresent() ? upper : at(samples, spread.least(), spread);
    }

    private static Optional<Saturation> at(double[] samples, double level, Spread spread) {
        long count = 0;
        int stretches = 0;
        int first = -1;
        int run = 0;
        for (int i = 0; i < samples.length; i++) {
            run = samples[i] == level ? run + 1 : 0;
            count += run > 0 ? 1 : 0;
            if (run == STRETCH) {
                first = stretches == 0 ? i - STRETCH + 1 : first;
                stretches++;
            }
        }
        boolean often = stretches >= STRETCHES && count <= RESTING * spread.numbers();
        if (level == 0 || !often || !abrupt(samples, level, count, spread)) {
            return Optional.empty();
        }
        return Optional.of(new Saturation(level, count, first));
    }

    /** Whether the limit holds far more samples than the band below it that is a 50th of the range wide. */
    private static boolean abrupt(double[] samples, double level, long count, Spread spread) {
        double band = (spread.most() - spread.least()) / 50;
        long near = 0;
        for (double sample : samples) {
            double off = Math.abs(sample - level);
            near += off > 0 && off <= band ? 1 : 0;
        }
        return count > 3 * near && levels(samples) >= LEVELS;
    }

    private static int levels(double[] samples) {
        int stride = Math.max(1, samples.length / 4096);
        double[] some = new double[(samples.length + stride - 1) / stride];
        for (int i = 0; i < some.length; i++) {
            some[i] = samples[i * stride];
        }
        Arrays.sort(some);
        int levels = 1;
        for (int i = 1; i < some.length; i++) {
            levels += some[i] > some[i - 1] ? 1 : 0;
        }
        return levels;
    }
}
