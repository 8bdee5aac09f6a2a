package servowright.engine.capture;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * The share of time in which a bus was held, over windows that slide with the frames: for each window the highest, and over the
 * whole capture the mean. A frame ends at its stamp; the first frame of a window counts only as far as it lies in it. The frames of the
 * fullest window of one length are kept.
 */
final class LoadMeter {
    private static final long[] WINDOWS_NS = {1_000_000, 10_000_000, 100_000_000};
    private static final int MASK = (1 << 16) - 1;

    /** Which of the windows keeps its frames: 10 ms, some dozens of frames at the usual rates. */
    private static final int KEPT = 1;

    /** More are not drawn. */
    private static final int MOST_KEPT = 1000;

    /** When each of the last frames ended, and behind it how long it held the bus. */
    private final long[] ring = new long[2 * (MASK + 1)];

    private final int[] keys = new int[MASK + 1];
    private final Window[] windows =
            Arrays.stream(WINDOWS_NS).mapToObj(Window::new).toArray(Window[]::new);
    private long head;
    private long totalNs;
    private long saveAt = Long.MAX_VALUE;
    private Timeline fullest = Timeline.NONE;

    /**
     * @param key identifier of the frame as {@link IdTable#key} has it
     */
    void frame(long atNs, long busyNs, int key) {
        if (head == saveAt) {
            save();
        }
        int place = (int) head & MASK;
        ring[2 * place] = atNs;
        ring[2 * place + 1] = busyNs;
        keys[place] = key;
        head++;
        totalNs += busyNs;
        for (Window window : windows) {
            window.frame(atNs, busyNs);
        }
    }

    /** Takes the frames of the fullest window out of the ring, before they are written over or at the end. */
    private void save() {
        Window kept = windows[KEPT];
        long startNs = kept.mostEndNs - kept.lengthNs;
        List<Timeline.Held> held = new ArrayList<>();
        for (long k = kept.fullFrom; k < Math.min(kept.fullTo, kept.fullFrom + MOST_KEPT); k++) {
            int place = (int) k & MASK;
            long toNs = ring[2 * place] - startNs;
            int key = keys[place];
            held.add(new Timeline.Held(toNs - ring[2 * place + 1], toNs, IdTable.label(key), IdTable.rank(key)));
        }
        fullest = new Timeline(startNs, kept.lengthNs, held);
        saveAt = Long.MAX_VALUE;
    }

    /** The frames of the fullest window of 10 ms. */
    Timeline fullest() {
        if (saveAt != Long.MAX_VALUE) {
            save();
        }
        return fullest;
    }

    /** The clock has jumped: windows start anew. */
    void restart() {
        for (Window window : windows) {
            window.tail = head;
            window.sumNs = 0;
        }
    }

    /** A window that ends with the last frame. */
    private final class Window {
        private final long lengthNs;
        private long tail;
        private long sumNs;
        private long mostNs;
        private long mostEndNs;
        private long fullFrom;
        private long fullTo;

        Window(long lengthNs) {
            this.lengthNs = lengthNs;
        }

        void frame(long atNs, long busyNs) {
            long startNs = atNs - lengthNs;
            long sum = sumNs + busyNs;
            int first = 2 * ((int) tail & MASK);
            while (ring[first] <= startNs || head - tail > MASK) {
                sum -= ring[first + 1];
                tail++;
                first = 2 * ((int) tail & MASK);
            }
            sumNs = sum;
            if (sum > mostNs) {
                long beforeNs = Math.max(0, startNs - (ring[first] - ring[first + 1]));
                if (sum - beforeNs > mostNs) {
                    mostNs = sum - beforeNs;
                    mostEndNs = atNs;
                    fullFrom = tail;
                    fullTo = head;
                    if (this == windows[KEPT]) {
                        saveAt = tail + MASK;
                    }
                }
            }
        }

        Load load() {
            return new Load(lengthNs, (double) mostNs / lengthNs, mostEndNs);
        }
    }

    long totalNs() {
        return totalNs;
    }

    List<Load> loads() {
        return Arrays.stream(windows).map(Window::load).toList();
    }
}
