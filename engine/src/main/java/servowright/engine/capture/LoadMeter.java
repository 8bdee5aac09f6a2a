package servowright.engine.capture;

import java.util.Arrays;
import java.util.List;

/**
 * The share of time in which a bus was held, over windows that slide with the frames: for each window the highest, and over the
 * whole capture the mean. A frame ends at its stamp; the first frame of a window counts only as far as it lies in it.
 */
final class LoadMeter {
    private static final long[] WINDOWS_NS = {1_000_000, 10_000_000, 100_000_000};
    private static final int MASK = (1 << 16) - 1;

    /** When each of the last frames ended, and behind it how long it held the bus. */
    private final long[] ring = new long[2 * (MASK + 1)];

    private final Window[] windows =
            Arrays.stream(WINDOWS_NS).mapToObj(Window::new).toArray(Window[]::new);
    private long head;
    private long totalNs;

    void frame(long atNs, long busyNs) {
        int slot = 2 * ((int) head & MASK);
        ring[slot] = atNs;
        ring[slot + 1] = busyNs;
        head++;
        totalNs += busyNs;
        for (Window window : windows) {
            window.frame(atNs, busyNs);
        }
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
