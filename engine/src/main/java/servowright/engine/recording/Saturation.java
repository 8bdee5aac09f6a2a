package servowright.engine.recording;

import java.util.Arrays;
import java.util.Optional;

/**
 * A signal that stands at its highest or lowest value as one does that runs out of the range of its instrument.
 *
 * <p>It stands there without any flicker, far longer than a smooth extreme that is read in steps would: such a one spends \\( \\sqrt{n + 1} -
 * \\sqrt{n} \\) of the time of its first step in the n-th step below it. It arrives there at the pace it had, while one that settles
 * halves its distance again and again. And it stands nowhere else for as long, while a command or a reading in stairs does.
 *
 * @param level the value it stands at
 * @param count samples at that value
 * @param first row of the first stretch at that value, from 0
 * @param sure  whether the signal flickers elsewhere, or is cut off again and again: a smooth one that stands still once may be held there
 */
public record Saturation(double level, long count, int first, boolean sure) {
    /** A stretch at the limit has at least this many samples. */
    private static final int STRETCH = 4;

    private static final int STRETCHES = 2;

    /** Signals with fewer levels than this are states, not waves. */
    private static final int LEVELS = 32;

    /** Above this share of all samples a smooth level may be where the signal rests. */
    private static final double RESTING = 0.3;

    /** Times as long at the limit as in the band below it; a smooth extreme read in steps keeps below 2.42. */
    private static final double ABRUPT = 3;

    /** Times as long in the band below the limit as in the next; an exponential that settles reaches 3, a straight line 1. */
    private static final double SETTLES = 2.2;

    /** Times as long at the limit as anywhere else. */
    private static final double ELSEWHERE = 3;

    /** Times as long as anywhere else that no settling explains, where the signal flickers. */
    private static final double ENDLESS = 20;

    /** Neighbouring steps of noise turn back in two of three cases, those of a smooth signal hardly ever. */
    private static final double FLICKERS = 0.15;

    /** The upper or lower limit that {@code samples} run into, if they do; an extreme of exactly 0 is a rest. */
    public static Optional<Saturation> find(double[] samples) {
        return find(samples, 0);
    }

    /** The same of a signal that swings and rests nowhere, not even at 0. */
    public static Optional<Saturation> ofWave(double[] samples) {
        return find(samples, Double.NaN);
    }

    private static Optional<Saturation> find(double[] samples, double rest) {
        Spread spread = Spread.of(samples);
        if (spread.numbers() == 0 || spread.least() == spread.most()) {
            return Optional.empty();
        }
        Optional<Saturation> upper = spread.most() == rest ? Optional.empty() : at(samples, spread.most(), spread);
        return upper.isPresent() || spread.least() == rest ? upper : at(samples, spread.least(), spread);
    }

    private static Optional<Saturation> at(double[] samples, double level, Spread spread) {
        long count = 0;
        int stretches = 0;
        int first = -1;
        int run = 0;
        int longest = 0;
        for (int i = 0; i < samples.length; i++) {
            run = samples[i] == level ? run + 1 : 0;
            count += run > 0 ? 1 : 0;
            longest = Math.max(longest, run);
            if (run == STRETCH) {
                first = stretches == 0 ? i - STRETCH + 1 : first;
                stretches++;
            }
        }
        int elsewhere = elsewhere(samples, spread);
        double[] levels = stretches == 0 || longest < ELSEWHERE * elsewhere ? new double[0] : Levels.of(samples);
        if (levels.length < LEVELS || !abrupt(samples, level, count, Levels.step(levels), spread)) {
            return Optional.empty();
        }
        boolean flickers = flickers(samples, spread);
        if (settles(samples, level, Levels.step(levels), spread) && !(flickers && longest > ENDLESS * elsewhere)) {
            return Optional.empty();
        }
        boolean again = stretches >= STRETCHES && count <= RESTING * spread.numbers();
        return Optional.of(new Saturation(level, count, first, again || flickers));
    }

    /** Longest stretch of equal samples that are neither 0 nor an extreme. */
    private static int elsewhere(double[] samples, Spread spread) {
        int run = 1;
        int longest = 1;
        for (int i = 1; i < samples.length; i++) {
            run = samples[i] == samples[i - 1] ? run + 1 : 1;
            boolean inside = samples[i] != 0 && samples[i] > spread.least() && samples[i] < spread.most();
            longest = inside ? Math.max(longest, run) : longest;
        }
        return longest;
    }

    /** Whether the signal came to the limit ever more slowly. */
    private static boolean settles(double[] samples, double level, double step, Spread spread) {
        double wide = Math.max((spread.most() - spread.least()) / 50, 4 * step);
        long near = within(samples, level, wide);
        return near > SETTLES * (within(samples, level, 2 * wide) - near + 1);
    }

    /** Whether the limit holds far more samples than some band below it. */
    private static boolean abrupt(double[] samples, double level, long count, double step, Spread spread) {
        double range = spread.most() - spread.least();
        for (double part = 50; part <= 400; part *= 2) {
            double band = Math.max(range / part, 2 * step);
            if (count > ABRUPT * within(samples, level, band)) {
                return true;
            }
        }
        return false;
    }

    /** Samples off the level by no more than that. */
    private static long within(double[] samples, double level, double band) {
        long near = 0;
        for (double sample : samples) {
            double off = Math.abs(sample - level);
            near += off > 0 && off <= band ? 1 : 0;
        }
        return near;
    }

    /** Whether the signal between its extremes turns back from step to step, as one that was measured does. */
    private static boolean flickers(double[] samples, Spread spread) {
        int steps = 0;
        int back = 0;
        double before = 0;
        for (int i = 1; i < samples.length; i++) {
            double step = samples[i] - samples[i - 1];
            boolean inside = samples[i] > spread.least() && samples[i] < spread.most();
            if (inside && step != 0) {
                steps++;
                back += step * before < 0 ? 1 : 0;
            }
            before = step != 0 ? step : before;
        }
        return back > FLICKERS * steps;
    }

    /** The levels that a signal takes, of up to so many of its samples. */
    private static final class Levels {
        private static final int MOST = 4096;

        private Levels() {}

        /** In rising order, each once. */
        static double[] of(double[] samples) {
            int stride = Math.max(1, samples.length / MOST);
            double[] some = new double[(samples.length + stride - 1) / stride];
            for (int i = 0; i < some.length; i++) {
                some[i] = samples[i * stride];
            }
            return Arrays.stream(some)
                    .filter(Double::isFinite)
                    .sorted()
                    .distinct()
                    .toArray();
        }

        /** A usual distance of neighbours: that of most where the signal was read in steps, and next to nothing where it was not. */
        static double step(double[] levels) {
            double[] steps = new double[levels.length - 1];
            for (int i = 0; i < steps.length; i++) {
                steps[i] = levels[i + 1] - levels[i];
            }
            Arrays.sort(steps);
            return steps.length == 0 ? 0 : steps[steps.length / 4];
        }
    }
}
