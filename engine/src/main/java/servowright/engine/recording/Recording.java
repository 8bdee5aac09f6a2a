package servowright.engine.recording;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.quantity.Require;

/**
 * A log or a scope trace.
 *
 * @param name what people call it, usually the file name
 * @param sourceHash SHA-256 of the file it came from, in hexadecimal
 * @param clock when each row was taken
 * @param channels the signals, each as long as the clock, no two with one name
 * @param remarks what was concluded and found on the way
 */
public record Recording(String name, String sourceHash, Clock clock, List<Channel> channels, List<Remark> remarks) {
    public Recording {
        channels = List.copyOf(channels);
        remarks = List.copyOf(remarks);
        Set<String> names = new HashSet<>();
        for (Channel channel : channels) {
            if (channel.samples().length != clock.count()) {
                throw new IllegalArgumentException("channel " + channel.name() + " has " + channel.samples().length
                        + " samples, the clock has " + clock.count());
            }
            if (!names.add(channel.name())) {
                throw new IllegalArgumentException("two channels are called " + channel.name());
            }
        }
    }

    /** The channel of that name, if there is one. */
    public Optional<Channel> channel(String wanted) {
        return channels.stream().filter(c -> c.name().equals(wanted)).findFirst();
    }

    /** Number of rows. */
    public int count() {
        return clock.count();
    }

    /** Rows {@code from} (included) to {@code to} (excluded). */
    public Recording rows(int from, int to) {
        if (!(0 <= from && from <= to && to <= count())) {
            throw new IllegalArgumentException("rows " + from + " to " + to + " do not lie within 0 to " + count());
        }
        List<Channel> cut = channels.stream()
                .map(c -> c.with(Arrays.copyOfRange(c.samples(), from, to)))
                .toList();
        return new Recording(name, sourceHash, clock.part(from, to), cut, remarks);
    }

    /** The stretch from the first row not before {@code fromS} up to the row before the first one after {@code toS}. */
    public Recording cut(double fromS, double toS) {
        requireOneSegment();
        int from = 0;
        while (from < count() && clock.timeS(from) < fromS) {
            from++;
        }
        int to = from;
        while (to < count() && clock.timeS(to) <= toS) {
            to++;
        }
        return rows(from, to);
    }

    /** Number of segments. */
    public int segmentCount() {
        return clock.segmentStarts().size();
    }

    /** Segment {@code k}, counted from 0, as a recording of its own. */
    public Recording segment(int k) {
        List<Integer> starts = clock.segmentStarts();
        return rows(starts.get(k), k + 1 < starts.size() ? starts.get(k + 1) : count());
    }

    /**
     * Means of {@code n} neighbouring rows, time included. Blocks do not reach over the start of a segment; an incomplete
     * block at an end is left out.
     */
    public Recording every(int n) {
        Require.atLeast("rows in a block", 1, n);
        List<Integer> blocks = new ArrayList<>();
        List<Integer> starts = new ArrayList<>();
        for (int k = 0; k < segmentCount(); k++) {
            int from = clock.segmentStarts().get(k);
            int to = k + 1 < segmentCount() ? clock.segmentStarts().get(k + 1) : count();
            if (to - from >= n || starts.isEmpty()) {
                starts.add(blocks.size());
            }
            for (int row = from; row + n <= to; row += n) {
                blocks.add(row);
            }
        }
        List<Channel> thinned = channels.stream()
                .map(c -> c.with(means(c.samples(), blocks, n)))
                .toList();
        return new Recording(name, sourceHash, thinnedClock(blocks, starts, n), thinned, remarks);
    }

    private Clock thinnedClock(List<Integer> blocks, List<Integer> starts, int n) {
        if (clock instanceof RowOrder) {
            return new RowOrder(blocks.size());
        }
        if (clock instanceof UniformClock even) {
            double startS = even.startS() + (n - 1) / 2.0 * even.intervalS();
            return new UniformClock(startS, n * even.intervalS(), blocks.size(), even.began());
        }
        double[] stampsS = new double[blocks.size()];
        for (int b = 0; b < stampsS.length; b++) {
            for (int i = 0; i < n; i++) {
                stampsS[b] += clock.timeS(blocks.get(b) + i) / n;
            }
        }
        return new StampedClock(stampsS, starts, clock.began());
    }

    private static double[] means(double[] samples, List<Integer> blocks, int n) {
        double[] means = new double[blocks.size()];
        for (int b = 0; b < means.length; b++) {
            double sum = 0;
            for (int i = 0; i < n; i++) {
                sum += samples[blocks.get(b) + i];
            }
            means[b] = sum / n;
        }
        return means;
    }

    /**
     * The channels at even times, by straight lines between neighbours. Times before the first and after the last row are
     * refused: nothing is known there. The recording must have one segment and times that do not run backward.
     */
    public Recording resampled(double startS, double intervalS, int rows) {
        UniformClock even = new UniformClock(startS, intervalS, rows, clock.began());
        requireOneSegment();
        if (rows > 0
                && !(count() > 0 && startS >= clock.timeS(0) && even.timeS(rows - 1) <= clock.timeS(count() - 1))) {
            throw new IllegalArgumentException("the new times must lie within the recording");
        }
        int[] left = new int[rows];
        int row = 0;
        for (int i = 0; i < rows; i++) {
            while (row + 2 < count() && clock.timeS(row + 1) <= even.timeS(i)) {
                row++;
            }
            left[i] = row;
        }
        List<Channel> lines = channels.stream()
                .map(c -> c.with(between(c.samples(), left, even)))
                .toList();
        return new Recording(name, sourceHash, even, lines, remarks);
    }

    private double[] between(double[] samples, int[] left, UniformClock even) {
        double[] values = new double[left.length];
        for (int i = 0; i < left.length; i++) {
            int a = left[i];
            int b = Math.min(a + 1, samples.length - 1);
            double span = clock.timeS(b) - clock.timeS(a);
            double share = span > 0 ? (even.timeS(i) - clock.timeS(a)) / span : 0;
            values[i] = share == 0 ? samples[a] : samples[a] + share * (samples[b] - samples[a]);
        }
        return values;
    }

    private void requireOneSegment() {
        if (segmentCount() != 1) {
            throw new IllegalArgumentException("the recording has " + segmentCount() + " segments: take one first");
        }
    }

    /** The same recording with other channels. */
    public Recording with(List<Channel> others) {
        return new Recording(name, sourceHash, clock, others, remarks);
    }

    /** The moment at time 0 when the file states absolute time. */
    public Optional<Instant> began() {
        return clock.began();
    }
}
