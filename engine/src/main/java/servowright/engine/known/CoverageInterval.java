package servowright.engine.known;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.ToDoubleFunction;
import java.util.random.RandomGenerator;
import servowright.engine.numeric.Distribution;
import servowright.engine.numeric.Interval;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Dimension;

/**
 * The interval that holds a computed figure with about 95 %: by first order where its function is straight over what is
 * known of the inputs, by drawing the inputs where it bends.
 *
 * <p><b>Formula.</b> First order y ± 2 u(y). Every source s of the inputs is drawn as z_s, of unit variance, and put in as
 * x_i + Σ c_s(x_i) z_s: limits as a rectangle, what was estimated from few readings as Student's t, each in its own right.
 * The function bends if the drawn interval of y and that of its straight line, from the same draws, differ at either end by
 * more than half of the first digit of u(y); then the shortest interval of the draws stands. <b>Valid for</b> inputs that
 * cannot change their sign: a draw that would is made again. <b>Source.</b> JCGM 101:2008, 5.3.4 (shortest interval), 6.4.2
 * and 6.4.9 (what to draw from), 7.7.4, and 7.9.2 with 8.1.3 (comparison with first order; here with one digit).
 *
 * @param value the figure by first order
 * @param range SI
 * @param drawn whether the function bends and the interval comes from draws
 */
public record CoverageInterval(Known value, Interval range, boolean drawn) {
    /** Coverage factor for about 95 %. <b>Source.</b> JCGM 100:2008, 6.3.3. */
    public static final double FACTOR = 2;

    private static final double PROBABILITY = 0.95;
    private static final int TRIALS = 10_000;

    /** With fewer degrees of freedom Student's t has no variance. */
    private static final double FEWEST_FREEDOM = 2;

    /** More draws without an answer than this, and the interval has no end. */
    private static final double MOST_LOST = 0.025;

    /**
     * The interval of a function of uncertain figures; empty where the function has no answer at the estimates or in more
     * than a few of the draws.
     *
     * @param f takes the inputs' SI values in their order; a value that is not finite is no answer
     */
    public static Optional<CoverageInterval> of(
            Dimension result, ToDoubleFunction<double[]> f, List<Known> inputs, RandomGenerator random) {
        double[] estimates = inputs.stream().mapToDouble(Known::si).toArray();
        if (!Double.isFinite(f.applyAsDouble(estimates))) {
            return Optional.empty();
        }
        Known value = Propagation.derive(result, f, inputs);
        double u = value.standardUncertainty();
        if (!Double.isFinite(u)) {
            return Optional.empty();
        }
        Interval straight = new Interval(value.si() - FACTOR * u, value.si() + FACTOR * u);
        if (inputs.stream().allMatch(k -> k.parts().isEmpty())) {
            return Optional.of(new CoverageInterval(value, straight, false));
        }
        Draws draws = new Draws(inputs, random);
        return draws.followsItsLine(f, value, halfOfFirstDigit(u))
                ? Optional.of(new CoverageInterval(value, straight, false))
                : drawn(value, straight, f, draws);
    }

    private static Optional<CoverageInterval> drawn(
            Known value, Interval straight, ToDoubleFunction<double[]> f, Draws draws) {
        double[] slopes = draws.partsOf(value);
        double[] bent = new double[TRIALS];
        double[] line = new double[TRIALS];
        int kept = 0;
        for (int trial = 0; trial < TRIALS; trial++) {
            double y = f.applyAsDouble(draws.next());
            if (Double.isFinite(y)) {
                bent[kept] = y;
                line[kept++] = value.si() + draws.shift(slopes);
            }
        }
        if (kept < TRIALS * (1 - MOST_LOST)) {
            return Optional.empty();
        }
        double[] answers = Arrays.copyOf(bent, kept);
        Interval both = Interval.symmetric(answers, PROBABILITY);
        Interval plain = Interval.symmetric(Arrays.copyOf(line, kept), PROBABILITY);
        double off = Math.max(Math.abs(both.low() - plain.low()), Math.abs(both.high() - plain.high()));
        boolean bends = off > halfOfFirstDigit(Statistics.standardDeviation(answers));
        Interval range = bends ? Interval.shortest(answers, PROBABILITY) : straight;
        return Optional.of(new CoverageInterval(value, range, bends));
    }

    /** JCGM 101:2008, 7.9.2 with one significant digit: u = c 10^l with c from 1 to 9, δ = 10^l / 2. */
    private static double halfOfFirstDigit(double u) {
        return u > 0 ? 0.5 * Math.pow(10, Math.floor(Math.log10(u))) : 0;
    }

    /** Draws of all inputs together, source by source. */
    private static final class Draws {
        private final double[] estimates;
        private final double[][] parts;
        private final Source[] sources;
        private final Distribution[] shapes;
        private final double[] deviates;
        private final RandomGenerator random;

        Draws(List<Known> inputs, RandomGenerator random) {
            TreeSet<Source> all = new TreeSet<>();
            inputs.forEach(k -> all.addAll(k.parts().keySet()));
            this.sources = all.toArray(Source[]::new);
            this.shapes = all.stream().map(s -> shape(s.degreesOfFreedom())).toArray(Distribution[]::new);
            this.deviates = new double[sources.length];
            this.estimates = inputs.stream().mapToDouble(Known::si).toArray();
            this.parts = inputs.stream().map(this::partsOf).toArray(double[][]::new);
            this.random = random;
        }

        private static Distribution shape(double freedom) {
            if (Double.isInfinite(freedom)) {
                return Distribution.rectangular(-Math.sqrt(3), Math.sqrt(3));
            }
            return freedom > FEWEST_FREEDOM ? Distribution.studentT(0, 1, freedom) : Distribution.normal(0, 1);
        }

        /** What each source contributes to a figure. */
        double[] partsOf(Known figure) {
            return Arrays.stream(sources)
                    .mapToDouble(s -> figure.parts().getOrDefault(s, 0.0))
                    .toArray();
        }

        double[] next() {
            double[] x;
            do {
                for (int s = 0; s < shapes.length; s++) {
                    shapes[s].draw(random, deviates, s);
                }
                x = moved();
            } while (!possible(x));
            return x;
        }

        /**
         * Whether a function stays within a distance of its straight line at twice the standard uncertainty of each source to
         * either side, and of all of them pulling together: then draws would say nothing else.
         */
        boolean followsItsLine(ToDoubleFunction<double[]> f, Known value, double distance) {
            double[] slopes = partsOf(value);
            for (int sign = -1; sign <= 1; sign += 2) {
                for (int one = -1; one < sources.length; one++) {
                    for (int s = 0; s < sources.length; s++) {
                        boolean moved = one < 0 || s == one;
                        deviates[s] = moved ? sign * FACTOR * (slopes[s] < 0 ? -1 : 1) : 0;
                    }
                    double[] x = moved();
                    double off = possible(x) ? f.applyAsDouble(x) - value.si() - shift(slopes) : Double.NaN;
                    if (!(Math.abs(off) <= distance)) {
                        return false;
                    }
                }
            }
            return true;
        }

        private double[] moved() {
            double[] x = new double[estimates.length];
            for (int i = 0; i < x.length; i++) {
                x[i] = estimates[i] + shift(parts[i]);
            }
            return x;
        }

        /** Whether no input has changed its sign; one of zero may have either. */
        private boolean possible(double... x) {
            for (int i = 0; i < x.length; i++) {
                if (estimates[i] != 0 && !(x[i] * estimates[i] > 0)) {
                    return false;
                }
            }
            return true;
        }

        /** How far this draw moves a figure from its estimate. */
        double shift(double... contributions) {
            double sum = 0;
            for (int s = 0; s < contributions.length; s++) {
                sum += contributions[s] * deviates[s];
            }
            return sum;
        }
    }
}
