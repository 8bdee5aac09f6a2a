package servowright.engine.recording;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** What a column of time stamps shows: whether it ticks evenly, stands still, jumps, runs backward or starts anew. */
public final class Stamps {
    /** A step this many times the typical one is a gap. */
    private static final double GAP = 3;

    /** Steps that stray from even by less than this part of the interval are even. */
    private static final double EVEN = 1e-3;

    /** Rounding moves a stamp by half a digit either way; a little more for the slope found through it. */
    private static final double ROUNDING = 1.2;

    private static final int SAMPLED_STEPS = 4096;

    private Stamps() {}

    /**
     * Steps of one sort.
     *
     * @param count how many
     * @param first row behind the first of them, from 0
     * @param largest the largest of them in the unit of the stamps, without sign
     */
    public record Steps(long count, int first, double largest) {}

    /**
     * An even clock behind rounded stamps.
     *
     * @param start time of row 0
     * @param interval time between rows
     * @param rowsPerStamp how many rows share a stamp because the column has too few digits; 1 when all differ
     */
    public record Even(double start, double interval, int rowsPerStamp) {}

    /** The median of the forward steps, from an even selection of them; NaN when there is none. */
    public static double typicalStep(double[] stamps) {
        int stride = Math.max(1, (stamps.length - 1) / SAMPLED_STEPS);
        double[] steps = new double[Math.max(0, (stamps.length - 1) / stride + 1)];
        int n = 0;
        for (int i = 1; i < stamps.length; i += stride) {
            double step = stamps[i] - stamps[i - 1];
            if (step > 0) {
                steps[n++] = step;
            }
        }
        if (n == 0) {
            return Double.NaN;
        }
        Arrays.sort(steps, 0, n);
        return steps[n / 2];
    }

    /** Neighbouring rows with the same stamp. */
    public static Steps repeats(double[] stamps) {
        return steps(stamps, 0, 0);
    }

    /** Steps back in time. */
    public static Steps backward(double[] stamps) {
        return steps(stamps, Double.NEGATIVE_INFINITY, -Double.MIN_VALUE);
    }

    /** Steps of more than three times the typical one. */
    public static Steps gaps(double[] stamps) {
        return steps(stamps, GAP * typicalStep(stamps), Double.POSITIVE_INFINITY);
    }

    private static Steps steps(double[] stamps, double least, double most) {
        long count = 0;
        int first = -1;
        double largest = 0;
        for (int i = 1; i < stamps.length; i++) {
            double step = stamps[i] - stamps[i - 1];
            if (step >= least && step <= most) {
                first = count == 0 ? i : first;
                largest = Math.max(largest, Math.abs(step));
                count++;
            }
        }
        return new Steps(count, first, largest);
    }

    /**
     * The rows at which the time starts anew: a step back that lands at the first stamp of the record, give or take two
     * typical steps, from a stretch that is at least 8 rows long. Always holds row 0.
     */
    public static List<Integer> segmentStarts(double[] stamps) {
        List<Integer> starts = new ArrayList<>(List.of(0));
        double near = 2 * typicalStep(stamps);
        for (int i = 1; i < stamps.length; i++) {
            boolean back = stamps[i] < stamps[i - 1];
            int length = i - starts.get(starts.size() - 1);
            if (back && length >= 8 && Math.abs(stamps[i] - stamps[0]) <= near) {
                starts.add(i);
            }
        }
        return starts;
    }

    /**
     * The even clock behind stamps that are even but for their rounding, if there is one. Two patterns count as rounding:
     * every stamp within half a printed digit of a straight line over the row number, and stamps that each stand for the
     * same number of rows.
     *
     * @param resolution the value of the last digit printed, 0 when unknown
     */
    public static Optional<Even> even(double[] stamps, double resolution) {
        if (stamps.length < 3
                || !(stamps[stamps.length - 1] > stamps[0])
                || backward(stamps).count() > 0) {
            return Optional.empty();
        }
        Optional<Even> straight = straight(stamps, resolution);
        return straight.isPresent() ? straight : staircase(stamps);
    }

    /** Least squares of stamp over row number: slope = sum((i - m) s_i) / sum((i - m)^2), m the middle row. */
    private static Optional<Even> straight(double[] stamps, double resolution) {
        int n = stamps.length;
        double middle = (n - 1) / 2.0;
        double moment = 0;
        for (int i = 0; i < n; i++) {
            moment += (i - middle) * (stamps[i] - stamps[0]);
        }
        double interval = moment * 12 / ((double) n * n * n - n);
        double tidy = shortestWithin(interval, 0.1 * Math.max(resolution, 1e-6 * interval) / n);
        return at(stamps, tidy, resolution);
    }

    /**
     * The even clock of a known interval behind rounded stamps, if there is one: all stamps less row times interval lie within
     * one printed digit of each other. The start is the middle of what the digits allow.
     *
     * @param interval time between rows, in the unit of the stamps
     * @param resolution the value of the last digit printed, 0 when unknown
     */
    public static Optional<Even> at(double[] stamps, double interval, double resolution) {
        double least = Double.POSITIVE_INFINITY;
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < stamps.length; i++) {
            double start = stamps[i] - i * interval;
            least = Math.min(least, start);
            most = Math.max(most, start);
        }
        double allowed = Math.max(ROUNDING * resolution, 2 * EVEN * interval);
        if (!(interval > 0 && most - least <= allowed)) {
            return Optional.empty();
        }
        int shared = repeats(stamps).count() > 0 ? (int) Math.max(2, Math.round(resolution / interval)) : 1;
        return Optional.of(new Even(shortestWithin((least + most) / 2, 1e-3 * allowed), interval, shared));
    }

    /** Stamps that each stand for the same number of rows, whole runs only. */
    private static Optional<Even> staircase(double[] stamps) {
        int run = 1;
        while (run < stamps.length && stamps[run] == stamps[0]) {
            run++;
        }
        if (run < 2 || stamps.length % run != 0 || stamps.length / run < 3) {
            return Optional.empty();
        }
        double[] treads = new double[stamps.length / run];
        for (int i = 0; i < stamps.length; i++) {
            if (i % run == 0) {
                treads[i / run] = stamps[i];
            } else if (stamps[i] != stamps[i - 1]) {
                return Optional.empty();
            }
        }
        int rows = run;
        return straight(treads, 0).map(e -> new Even(stamps[0], e.interval() / rows, rows));
    }

    /** The number with the fewest digits that lies within {@code tolerance} of {@code value}. */
    static double shortestWithin(double value, double tolerance) {
        if (Math.abs(value) <= tolerance) {
            return 0;
        }
        BigDecimal exact = new BigDecimal(value);
        for (int digits = 1; digits < 16; digits++) {
            double shorter =
                    exact.round(new MathContext(digits, RoundingMode.HALF_EVEN)).doubleValue();
            if (Math.abs(shorter - value) <= tolerance) {
                return shorter;
            }
        }
        return value;
    }
}
