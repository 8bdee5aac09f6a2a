package servowright.engine.recording;

import java.util.Arrays;
import java.util.Optional;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.Interval;
import servowright.engine.numeric.LinearFit;
import servowright.engine.numeric.Minimum;
import servowright.engine.numeric.Statistics;

/**
 * How far apart the clocks of two recorders are that saw one event, and how surely.
 *
 * <p><b>Formula.</b> One signal is scale and offset times the other, read δ later: b(t) = α + β a(t + δ), a interpolated straight between its samples. δ is
 * where the squared correlation of both is largest, searched over all shifts that let at least half of the shorter record overlap, then by
 * least squares; its uncertainty comes from the tangent β a'(t + δ) with one sixteenth of the overlap after the other left out. <b>Valid for</b> signals
 * of the same quantity, or of two that follow each other at once, that are not periodic within the search. <b>Source.</b> C. H. Knapp, G. C. Carter, "The generalized correlation
 * method for estimation of time delay", IEEE Transactions on Acoustics, Speech, and Signal Processing 24 (1976) (recalled); uncertainty derived.
 *
 * @param laterSecond     δ: an event at t on the clock of b is at t + δ on that of a
 * @param standardSecond  its standard uncertainty
 * @param freedom         degrees of freedom of that
 * @param correlation     of both signals at δ, signed
 * @param rival           largest size of the correlation at a shift of its own, apart from that of δ; 0 where there is none
 * @param overlapSecond   time that both cover
 * @param residuals       b less its fit, and b itself, over the overlap
 */
public record ClockOffset(
        double laterSecond,
        double standardSecond,
        double freedom,
        double correlation,
        double rival,
        double overlapSecond,
        Overlap residuals) {
    private static final int STRETCHES = 16;
    private static final int STEPS = 2000;
    private static final int SAMPLES = 800;
    private static final double LEAST_OVERLAP = 0.5;

    /** Below this share of the largest correlation its hill has ended. */
    private static final double FALLEN = 0.8;

    /** What both cover, on the clock of b. */
    @SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: the overlap of one pair
    public record Overlap(double[] seconds, double[] observed, double[] rest) {}

    /** Aligns b with a; rising times each. Empty where they do not determine it. */
    public static Optional<ClockOffset> of(double[] timesA, double[] a, double[] timesB, double[] b) {
        return new Pair(timesA, a, timesB, b).aligned();
    }

    /** The shifts that let at least half of the shorter record overlap: δ is one of these, s. */
    public static Interval shifts(double[] timesA, double[] timesB) {
        double startA = timesA[0];
        double endA = timesA[timesA.length - 1];
        double startB = timesB[0];
        double endB = timesB[timesB.length - 1];
        double least = LEAST_OVERLAP * Math.min(endA - startA, endB - startB);
        return new Interval(startA + least - endB, endA - least - startB);
    }

    private record Pair(double[] timesA, double[] a, double[] timesB, double[] b) {
        Optional<ClockOffset> aligned() {
            Interval shifts = shifts(timesA, timesB);
            double from = shifts.low();
            double to = shifts.high();
            double step = (to - from) / STEPS;
            double[] sizes = new double[STEPS + 1];
            int best = 0;
            for (int k = 0; k <= STEPS; k++) {
                sizes[k] = Math.abs(correlation(from + k * step, SAMPLES));
                best = sizes[k] > sizes[best] ? k : best;
            }
            double middle = from + best * step;
            double rival = rival(sizes, best);
            return Minimum.between(d -> -Math.abs(correlation(d, 4 * SAMPLES)), middle - 2 * step, middle + 2 * step)
                    .flatMap(m -> judged(m.at(), rival));
        }

        /** The next hill of the correlation beside that of the best. */
        private static double rival(double[] sizes, int best) {
            double down = FALLEN * sizes[best];
            int low = best;
            while (low > 0 && sizes[low] > down) {
                low--;
            }
            int high = best;
            while (high < sizes.length - 1 && sizes[high] > down) {
                high++;
            }
            double left = Arrays.stream(sizes, 0, low).max().orElse(0);
            return Math.max(
                    left, Arrays.stream(sizes, high + 1, sizes.length).max().orElse(0));
        }

        private int first(double later) {
            int at = Arrays.binarySearch(timesB, timesA[0] - later);
            return at < 0 ? -at - 1 : at;
        }

        private int last(double later) {
            int at = Arrays.binarySearch(timesB, timesA[timesA.length - 1] - later);
            return at < 0 ? -at - 2 : at;
        }

        private double correlation(double later, int most) {
            int from = first(later);
            int to = last(later);
            int stride = Math.max(1, (to - from + 1) / most);
            int n = (to - from) / stride + 1;
            if (to <= from || n < STRETCHES) {
                return 0;
            }
            double[] x = new double[n];
            double[] y = new double[n];
            int near = 0;
            for (int k = 0; k < n; k++) {
                double t = timesB[from + k * stride] + later;
                near = before(t, near);
                x[k] = between(t, near);
                y[k] = b[from + k * stride];
            }
            double r = Statistics.correlation(x, y);
            return Double.isFinite(r) ? r : 0;
        }

        private int before(double t, int start) {
            int at = start;
            while (at < timesA.length - 2 && timesA[at + 1] <= t) {
                at++;
            }
            return at;
        }

        private int found(double t) {
            int at = Arrays.binarySearch(timesA, t);
            return Math.max(0, Math.min(timesA.length - 2, at < 0 ? -at - 2 : at));
        }

        private double between(double t, int at) {
            return a[at] + slope(at) * (t - timesA[at]);
        }

        private double slope(int at) {
            return (a[at + 1] - a[at]) / (timesA[at + 1] - timesA[at]);
        }

        /** Slope about a time, over twice the spacing of b or a, so that noise of single samples counts less. */
        private double slopeAbout(double t, double reach) {
            double low = Math.max(timesA[0], t - reach);
            double high = Math.min(timesA[timesA.length - 1], t + reach);
            return (between(high, found(high)) - between(low, found(low))) / (high - low);
        }

        private Optional<ClockOffset> judged(double later, double rival) {
            int from = first(later);
            int to = last(later);
            int n = to - from + 1;
            double[] ones = new double[n];
            double[] x = new double[n];
            double[] rising = new double[n];
            Arrays.fill(ones, 1);
            double[] t = Arrays.copyOfRange(timesB, from, to + 1);
            double[] y = Arrays.copyOfRange(b, from, to + 1);
            double reach = 4 * Math.max(spacing(timesA), spacing(timesB));
            int near = 0;
            for (int k = 0; k < n; k++) {
                near = before(t[k] + later, near);
                x[k] = between(t[k] + later, near);
                rising[k] = slopeAbout(t[k] + later, reach);
            }
            LinearFit fit = LinearFit.of(Design.ofColumns(ones, x), y);
            if (!fit.status().converged()) {
                return Optional.empty();
            }
            double beta = fit.parameter(1);
            double[] tangent = Arrays.stream(rising).map(s -> beta * s).toArray();
            double[] rest = fit.residuals().toArray();
            double r = Statistics.correlation(x, y);
            return BlockJackknife.of(Design.ofColumns(ones, x, tangent), y, STRETCHES)
                    .map(j -> new ClockOffset(
                            later + j.parameter(2),
                            j.standardError(2),
                            j.degreesOfFreedom(),
                            r,
                            rival,
                            t[n - 1] - t[0],
                            new Overlap(t, y, rest)));
        }

        private static double spacing(double[] times) {
            return (times[times.length - 1] - times[0]) / (times.length - 1);
        }
    }
}
