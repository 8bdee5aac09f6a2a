package servowright.engine.capture;

import java.util.List;

/**
 * What the stamps of one bus show about the clock they come from.
 *
 * @param firstNs first stamp
 * @param lastNs last stamp
 * @param elapsedNs time between the first and the last frame without the jumps
 * @param backward how often a stamp lay before the one in front of it
 * @param jumps the first steps backward, and forward by more than an hour
 * @param tooClose frames that end sooner behind the one before than they take on the wire
 * @param crowd the longest run of such frames
 */
public record Stamps(
        long firstNs, long lastNs, long elapsedNs, long backward, List<Jump> jumps, long tooClose, Crowd crowd) {
    public Stamps {
        jumps = List.copyOf(jumps);
    }

    /**
     * A step of the clock.
     *
     * @param frame number of the frame behind it, from 1
     * @param atNs stamp of the frame before it
     * @param byNs step, negative when backward
     */
    public record Jump(long frame, long atNs, long byNs) {}

    /**
     * Frames that stand closer than the bus allows: their stamps are those of the computer that fetched them in one go.
     *
     * @param frames how many in a row, 0 when there are none
     * @param shownNs time from the first to the last of them by the stamps
     * @param neededNs time that all but the first take on the wire at least
     * @param fromNs stamp of the first
     */
    public record Crowd(long frames, long shownNs, long neededNs, long fromNs) {}

    /** Whether a good part of the stamps cannot be the times at which frames were on the bus. */
    public boolean ofTheHost(long frames) {
        return tooClose > frames / 20;
    }
}
