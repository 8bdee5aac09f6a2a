package servowright.engine.bus;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import servowright.engine.numeric.GivenUp;
import servowright.engine.quantity.Require;

/**
 * All bit timings that a controller can set for a rate, best first: nearest to the reference sample point, then the one that
 * bears the most clock deviation.
 */
public final class TimingSearch {
    /** Largest deviation from the rate asked that is still offered, relative. */
    public static final double MOST_RATE_ERROR = 0.005;

    private TimingSearch() {}

    /**
     * What a controller can set.
     *
     * @param mostPrescaler largest prescaler
     * @param leastBefore   smallest prop + ps1
     * @param mostBefore    largest prop + ps1
     * @param leastPs2      smallest phase segment 2
     * @param mostPs2       largest phase segment 2
     * @param mostSjw       largest synchronisation jump width
     */
    public record Limits(int mostPrescaler, int leastBefore, int mostBefore, int leastPs2, int mostPs2, int mostSjw) {
        /** The smallest range a classical controller must offer (recalled from ISO 11898-1). */
        public static final Limits CLASSICAL = new Limits(32, 2, 16, 2, 8, 4);
    }

    /**
     * Sample point that CiA recommends, 0 to 1: above 800 kbit/s 75 %, above 500 kbit/s 80 %, else 87.5 %. <b>Source.</b> seen in a
     * public kernel's bit-timing source, which calls it so.
     */
    public static double recommendedSamplePoint(double bitsPerSecond) {
        if (bitsPerSecond > 800_000) {
            return 0.75;
        }
        return bitsPerSecond > 500_000 ? 0.80 : 0.875;
    }

    /**
     * All timings within {@value #MOST_RATE_ERROR} of the rate, best first.
     *
     * @param propNs      time the propagation segment must cover, ns; 0 when it is not known
     * @param samplePoint where to sample, 0 to 1
     */
    public static List<BitTiming> all(
            long clockHz, double bitsPerSecond, Limits limits, double propNs, double samplePoint) {
        return within(MOST_RATE_ERROR, clockHz, bitsPerSecond, limits, propNs, samplePoint);
    }

    static List<BitTiming> within(
            double rateError, long clockHz, double bitsPerSecond, Limits limits, double propNs, double samplePoint) {
        Require.positive("bit rate", bitsPerSecond, "bit/s");
        List<BitTiming> found = new ArrayList<>();
        for (int prescaler = 1; prescaler <= limits.mostPrescaler(); prescaler++) {
            GivenUp.check();
            double quantumNs = 1e9 * prescaler / clockHz;
            int prop = Math.max(1, (int) Math.ceil(propNs / quantumNs - 1e-9));
            for (int before = limits.leastBefore(); before <= limits.mostBefore(); before++) {
                for (int ps2 = limits.leastPs2(); ps2 <= limits.mostPs2(); ps2++) {
                    double rate = (double) clockHz / prescaler / (1 + before + ps2);
                    if (Math.abs(rate / bitsPerSecond - 1) <= rateError && before - prop >= 1) {
                        found.add(timing(clockHz, prescaler, before, ps2, prop, limits));
                    }
                }
            }
        }
        found.sort(Comparator.<BitTiming>comparingDouble(t -> Math.abs(t.bitsPerSecond() / bitsPerSecond - 1))
                .thenComparingDouble(t -> Math.abs(t.samplePoint() - samplePoint))
                .thenComparingDouble(t -> -t.clockTolerance())
                .thenComparingInt(BitTiming::prescaler));
        return List.copyOf(found);
    }

    private static BitTiming timing(long clockHz, int prescaler, int before, int ps2, int prop, Limits limits) {
        int ps1 = Math.min(Math.max(1, before - prop), Math.max(ps2, 1));
        int sjw = Math.min(limits.mostSjw(), Math.min(ps1, ps2));
        return new BitTiming(clockHz, prescaler, before - ps1, ps1, ps2, sjw);
    }
}
