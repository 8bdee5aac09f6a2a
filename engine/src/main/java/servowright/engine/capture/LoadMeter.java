package servowright.engine.capture;

import java.util.List;
import java.util.stream.IntStream;

/**
 * The share of time in which a bus was held, over windows that slide with the frames: for each window the highest, and over the
 * whole capture the mean. A frame ends at its stamp; the first frame of a window counts only as far as it lies in it.
 */
final class LoadMeter {
    private static final long[] WINDOWS_NS = {1_000_000, 10_000_000, 100_000_000};
    private static final int MASK = (1 << 16) - 1;

    private final long[] endNs = new long[MASK + 1];
    private final long[] heldNs = new long[MASK + 1];
    private final long[] tail = new long[WINDOWS_NS.length];
    private final long[] sumNs = new long[WINDOWS_NS.length];
    private final long[] mostNs = new long[WINDOWS_NS.length];
    private final long[] mostEndNs = new long[WINDOWS_NS.length];
    private long head;
    private long totalNs;

    void frame(long atNs, long busyNs) {
        int slot = (int) head & MASK;
        endNs[slot] = atNs;
        heldNs[slot] = busyNs;
        head++;
        totalNs += busyNs;
        for (int w = 0; w < WINDOWS_NS.length; w++) {
            long startNs = atNs - WINDOWS_NS[w];
            sumNs[w] += busyNs;
            while (endNs[(int) tail[w] & MASK] <= startNs || head - tail[w] > MASK) {
                sumNs[w] -= heldNs[(int) tail[w]++ & MASK];
            }
            int first = (int) tail[w] & MASK;
            long beforeNs = Math.max(0, startNs - (endNs[first] - heldNs[first]));
            if (sumNs[w] - beforeNs > mostNs[w]) {
                mostNs[w] = sumNs[w] - beforeNs;
                mostEndNs[w] = atNs;
            }
        }
    }

    /** The clock has jumped: windows start anew. */
    void restart() {
        for (int w = 0; w < WINDOWS_NS.length; w++) {
            tail[w] = head;
            sumNs[w] = 0;
        }
    }

    long totalNs() {
        return totalNs;
    }

    List<Load> loads() {
        return IntStream.range(0, WINDOWS_NS.length)
                .mapToObj(w -> new Load(WINDOWS_NS[w], (double) mostNs[w] / WINDOWS_NS[w], mostEndNs[w]))
                .toList();
    }
}
