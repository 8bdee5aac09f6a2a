package servowright.engine.recording;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A clock with a stamp per row.
 *
 * @param stampsS the time of each row in seconds; handed over, not to be written to
 * @param segmentStarts first row of each segment, rising, the first 0
 * @param began the moment at time 0 when it is known
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Channel
public record StampedClock(double[] stampsS, List<Integer> segmentStarts, Optional<Instant> began) implements Clock {
    public StampedClock {
        segmentStarts = List.copyOf(segmentStarts);
        if (segmentStarts.isEmpty() || segmentStarts.get(0) != 0) {
            throw new IllegalArgumentException("the first segment starts at row 0, was " + segmentStarts);
        }
        for (int i = 1; i < segmentStarts.size(); i++) {
            if (segmentStarts.get(i) <= segmentStarts.get(i - 1) || segmentStarts.get(i) >= stampsS.length) {
                throw new IllegalArgumentException("segment starts must rise within the rows, were " + segmentStarts);
            }
        }
        for (double stamp : stampsS) {
            if (!Double.isFinite(stamp)) {
                throw new IllegalArgumentException("a time stamp must be finite, was " + stamp);
            }
        }
    }

    @Override
    public int count() {
        return stampsS.length;
    }

    @Override
    public boolean timed() {
        return true;
    }

    @Override
    public double timeS(int row) {
        return stampsS[row];
    }

    @Override
    public double intervalS() {
        double span = 0;
        for (int k = 0; k < segmentStarts.size(); k++) {
            int end = segmentEnd(k);
            span += end > segmentStarts.get(k) ? stampsS[end - 1] - stampsS[segmentStarts.get(k)] : 0;
        }
        int steps = stampsS.length - segmentStarts.size();
        return steps > 0 ? span / steps : Double.NaN;
    }

    @Override
    public double jitterS() {
        double mean = intervalS();
        double squares = 0;
        int steps = 0;
        for (int k = 0; k < segmentStarts.size(); k++) {
            for (int i = segmentStarts.get(k) + 1; i < segmentEnd(k); i++) {
                double off = stampsS[i] - stampsS[i - 1] - mean;
                squares += off * off;
                steps++;
            }
        }
        return steps > 1 ? Math.sqrt(squares / (steps - 1)) : 0;
    }

    @Override
    public int distinct() {
        double[] sorted = stampsS.clone();
        Arrays.sort(sorted);
        int distinct = sorted.length == 0 ? 0 : 1;
        for (int i = 1; i < sorted.length; i++) {
            distinct += sorted[i] == sorted[i - 1] ? 0 : 1;
        }
        return distinct;
    }

    @Override
    public StampedClock part(int from, int to) {
        List<Integer> starts = new ArrayList<>(List.of(0));
        for (int start : segmentStarts) {
            if (start > from && start < to) {
                starts.add(start - from);
            }
        }
        return new StampedClock(Arrays.copyOfRange(stampsS, from, to), starts, began);
    }

    private int segmentEnd(int k) {
        return k + 1 < segmentStarts.size() ? segmentStarts.get(k + 1) : stampsS.length;
    }
}
