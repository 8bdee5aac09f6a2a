package servowright.engine.capture;

/**
 * How regularly frames of one kind came.
 *
 * @param count intervals between neighbours
 * @param leastNs shortest interval
 * @param medianNs middle interval, exact to 4 %
 * @param meanNs mean interval
 * @param mostNs longest interval
 * @param mostEndNs stamp at which the longest ended
 * @param spreadNs standard deviation of the intervals
 * @param pairSpreadNs standard deviation of the sums of two neighbouring intervals
 * @param gaps intervals above 1.6 medians
 * @param missing frames that would fill the gaps
 * @param bursts intervals below 0.4 medians
 * @param release the longest run of frames that were let go at once after a gap
 */
public record Period(
        long count,
        long leastNs,
        long medianNs,
        double meanNs,
        long mostNs,
        long mostEndNs,
        double spreadNs,
        double pairSpreadNs,
        long gaps,
        long missing,
        long bursts,
        Release release) {
    /** No interval was seen. */
    public static final Period NONE = new Period(0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, Release.NONE);

    private static final long ENOUGH = 20;

    /** Time between two frames when those that are missing are counted as sent, ns; 0 without an interval. */
    public double filledNs() {
        return count == 0 ? 0 : meanNs * count / (count + missing);
    }

    /** Whether the frames keep a period at all: nine of ten intervals lie near the median. */
    public boolean regular() {
        return count >= 5 && gaps + bursts <= count / 10;
    }

    /**
     * Whether two senders of the same period seem to share the identifier: intervals alternate, but two of them always add up to the
     * same. One sender that sends in pairs looks alike.
     */
    public boolean alternates() {
        return count >= ENOUGH && spreadNs > 0.2 * meanNs && pairSpreadNs < 0.1 * meanNs;
    }
}
