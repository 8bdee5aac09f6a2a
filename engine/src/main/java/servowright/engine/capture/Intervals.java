package servowright.engine.capture;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/**
 * Times between frames of one kind: extremes, mean, spread, and a histogram with sixteen bins to the octave, from which median and
 * gaps are taken when all have passed. A bin is 4.4 % wide, and so exact is the median.
 */
final class Intervals {
    private static final int PER_OCTAVE = 16;
    private static final int OCTAVES = 48;
    /** Intervals before a gap can be told from a slow start. */
    private static final int ENOUGH = 5;

    /** A gap is longer than this many mean intervals. */
    private static final double LONG = 4;

    /** Frames let go in a row are closer than this share of the mean interval. */
    private static final double SHORT = 0.25;

    private int @Nullable [] bins;
    private long count;
    private long leastNs = Long.MAX_VALUE;
    private long mostNs;
    private long mostEndNs;
    private double sum;
    private double squares;
    private double pairSum;
    private double pairSquares;
    private double centreNs;
    private long lastNs = -1;
    private double steadyNs;
    private long gapNs;
    private long runFromNs;
    private long run;
    private Release release = Release.NONE;

    void add(long ns, long atNs) {
        release(ns, atNs);
        int[] b = bins;
        if (b == null) {
            b = new int[OCTAVES * PER_OCTAVE];
            bins = b;
        }
        b[bin(ns)]++;
        if (count == 0) {
            centreNs = ns;
        }
        count++;
        double off = ns - centreNs;
        sum += off;
        squares += off * off;
        if (ns < leastNs) {
            leastNs = ns;
        }
        if (ns > mostNs) {
            mostNs = ns;
            mostEndNs = atNs;
        }
        if (lastNs >= 0) {
            double pairOff = off + (lastNs - centreNs);
            pairSum += pairOff;
            pairSquares += pairOff * pairOff;
        }
        lastNs = ns;
    }

    /** After a gap of many periods: how many frames follow each other much faster than they used to. */
    private void release(long ns, long atNs) {
        if (gapNs > 0) {
            if (ns < SHORT * steadyNs) {
                run++;
                if (run > release.frames()) {
                    release = new Release(gapNs, run, runFromNs, atNs - runFromNs);
                }
                return;
            }
            gapNs = 0;
        }
        if (count >= ENOUGH && (ns - LONG * centreNs) * count > LONG * sum) {
            steadyNs = mean();
            gapNs = ns;
            runFromNs = atNs;
            run = 1;
        }
    }

    /** How the intervals spread: middle of each bin that holds any, and how many. */
    Histogram histogram() {
        int[] b = bins == null ? new int[0] : bins;
        int[] used = IntStream.range(0, b.length).filter(k -> b[k] > 0).toArray();
        return new Histogram(
                Arrays.stream(used).mapToDouble(Intervals::middle).toArray(),
                Arrays.stream(used).mapToLong(k -> b[k]).toArray());
    }

    private static int bin(long ns) {
        if (ns < PER_OCTAVE) {
            return (int) Math.max(0, ns);
        }
        int octave = 63 - Long.numberOfLeadingZeros(ns);
        int part = (int) (ns >>> (octave - 4)) & 15;
        return Math.min((octave - 3) * PER_OCTAVE + part, OCTAVES * PER_OCTAVE - 1);
    }

    /** The middle of a bin, ns. */
    private static double middle(int bin) {
        if (bin < PER_OCTAVE) {
            return bin;
        }
        int octave = bin / PER_OCTAVE + 3;
        return (PER_OCTAVE + bin % PER_OCTAVE + 0.5) * (1L << (octave - 4));
    }

    private double mean() {
        return centreNs + sum / count;
    }

    /** Standard deviation from sums of what lies off the first interval, which is near the mean unless the bus began with a gap. */
    private static double spread(long n, double sum, double squares) {
        return n > 1 ? Math.sqrt(Math.max(0, squares - sum * sum / n) / (n - 1)) : 0;
    }

    Period period() {
        int[] b = bins;
        if (b == null) {
            return Period.NONE;
        }
        long seen = 0;
        int at = 0;
        while (seen + b[at] < (count + 1) / 2) {
            seen += b[at++];
        }
        double median = Math.max(1, Math.max((double) leastNs, Math.min((double) mostNs, middle(at))));
        long gaps = 0;
        long missing = 0;
        long bursts = 0;
        for (int k = 0; k < b.length; k++) {
            double ratio = middle(k) / median;
            if (ratio > 1.6) {
                gaps += b[k];
                missing += b[k] * Math.max(1, Math.round(ratio) - 1);
            } else if (ratio < 0.4) {
                bursts += b[k];
            }
        }
        return new Period(
                count,
                leastNs,
                Math.round(median),
                mean(),
                mostNs,
                mostEndNs,
                spread(count, sum, squares),
                spread(count - 1, pairSum, pairSquares),
                gaps,
                missing,
                bursts,
                release);
    }
}
