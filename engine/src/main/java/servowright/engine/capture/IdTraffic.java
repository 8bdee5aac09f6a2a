package servowright.engine.capture;

import java.util.Locale;

/**
 * The frames of one identifier on one bus.
 *
 * @param bus number of the bus
 * @param identifier 11 or 29 bits
 * @param extended whether it has 29
 * @param frames data frames
 * @param remotes remote frames
 * @param fd whether any was CAN FD
 * @param leastBytes fewest data bytes
 * @param mostBytes most data bytes
 * @param heldNs how long its frames held the bus in all; bits when no rate is known
 * @param firstNs first stamp
 * @param lastNs last stamp
 * @param period how regularly they came
 * @param histogram how the times between them spread
 */
public record IdTraffic(
        int bus,
        int identifier,
        boolean extended,
        long frames,
        long remotes,
        boolean fd,
        int leastBytes,
        int mostBytes,
        long heldNs,
        long firstNs,
        long lastNs,
        Period period,
        Histogram histogram) {

    /** The identifier as it is written, {@code 0x181} or {@code 0x18EBFF00}. */
    public String label() {
        return String.format(Locale.ROOT, extended ? "0x%08X" : "0x%03X", identifier);
    }

    /** Gathers the frames of one identifier. */
    static final class Gathering {
        private final int bus;
        private final int key;
        private final Intervals intervals = new Intervals();
        private long frames;
        private long remotes;
        private boolean fd;
        private int leastBytes = Integer.MAX_VALUE;
        private int mostBytes;
        private long heldNs;
        private long firstNs = Frame.NO_TIME;
        private long lastNs = Frame.NO_TIME;
        private boolean broken = true;

        Gathering(int bus, int key) {
            this.bus = bus;
            this.key = key;
        }

        void frame(Frame frame, long busyNs) {
            heldNs += busyNs;
            if (frame.is(Frame.REMOTE)) {
                remotes++;
                return;
            }
            frames++;
            fd |= frame.is(Frame.FD);
            leastBytes = Math.min(leastBytes, frame.length());
            mostBytes = Math.max(mostBytes, frame.length());
            long atNs = frame.timeNs();
            if (atNs == Frame.NO_TIME) {
                return;
            }
            if (!broken && atNs >= lastNs) {
                intervals.add(atNs - lastNs, atNs);
            }
            firstNs = firstNs == Frame.NO_TIME ? atNs : firstNs;
            lastNs = atNs;
            broken = false;
        }

        /** The clock has jumped: the next interval says nothing. */
        void restart() {
            broken = true;
        }

        IdTraffic traffic() {
            return new IdTraffic(
                    bus,
                    key & 0x1fff_ffff,
                    key >>> 29 != 0,
                    frames,
                    remotes,
                    fd,
                    frames == 0 ? 0 : leastBytes,
                    mostBytes,
                    heldNs,
                    firstNs,
                    lastNs,
                    intervals.period(),
                    intervals.histogram());
        }
    }
}
