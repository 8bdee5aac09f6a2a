package servowright.engine.bus;

import java.util.Optional;

/**
 * What a controller really does when it is asked for a rate and a sample point: it has whole quanta only.
 *
 * @param timing      the nearest setting
 * @param rateError   achieved rate against the one asked, relative
 * @param sampleError achieved sample point against the one asked, share of a bit
 */
public record AchievedTiming(BitTiming timing, double rateError, double sampleError) {
    /** Largest deviation of the rate that is taken at all. <b>Source.</b> a public kernel's bit-timing source (seen). */
    public static final double MOST_RATE_ERROR = 0.05;

    /** The setting nearest in rate, then in sample point; empty when none lies within 5 % of the rate. */
    public static Optional<AchievedTiming> nearest(
            long clockHz, double bitsPerSecond, TimingSearch.Limits limits, double samplePoint) {
        return TimingSearch.within(MOST_RATE_ERROR, clockHz, bitsPerSecond, limits, 0, samplePoint).stream()
                .findFirst()
                .map(t -> new AchievedTiming(t, t.bitsPerSecond() / bitsPerSecond - 1, t.samplePoint() - samplePoint));
    }
}
