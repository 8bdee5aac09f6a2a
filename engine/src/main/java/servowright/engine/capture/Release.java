package servowright.engine.capture;

/**
 * Frames that waited in a queue and were let go at once.
 *
 * @param gapNs silence before them
 * @param frames how many in a row came closer than a quarter of their usual distance, the first included; 0 when there were none
 * @param fromNs stamp of the first
 * @param withinNs time from the first to the last
 */
public record Release(long gapNs, long frames, long fromNs, long withinNs) {
    /** Nothing was let go. */
    static final Release NONE = new Release(0, 0, 0, 0);

    private static final int LEAST = 3;

    /** Whether so many came at once that a queue must have held them. */
    public boolean happened() {
        return frames >= LEAST;
    }
}
