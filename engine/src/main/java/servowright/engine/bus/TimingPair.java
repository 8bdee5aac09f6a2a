package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Whether two nodes understand each other: rates as really achieved, sample points, and the deviation of both clocks against what
 * the weaker of the two timings bears.
 *
 * <p><b>Formula.</b> The tolerance df is per node, so that two nodes may differ by 2 df; the difference is that of the achieved rates
 * plus both clocks' deviations. <b>Source.</b> Hartwich and Bassemir, 6th iCC, for df. Sample points within {@value
 * #NEAR_SAMPLE_POINTS} of a bit: common practice.
 *
 * @param rateDifference   relative difference of the achieved rates
 * @param sampleDifference distance of the sample points, share of a bit
 * @param differs          largest relative difference of the two bit clocks
 * @param bears            what both timings bear together
 */
public record TimingPair(double rateDifference, double sampleDifference, double differs, double bears) {
    /** Sample points this near are called the same, share of a bit. */
    public static final double NEAR_SAMPLE_POINTS = 0.02;

    /**
     * Two nodes.
     *
     * @param firstDeviation  how far the first clock may be off, relative
     * @param secondDeviation how far the second clock may be off, relative
     */
    public static TimingPair of(BitTiming first, double firstDeviation, BitTiming second, double secondDeviation) {
        Require.notNegative("clock deviation", firstDeviation, "");
        Require.notNegative("clock deviation", secondDeviation, "");
        double rates = Math.abs(first.bitsPerSecond() / second.bitsPerSecond() - 1);
        return new TimingPair(
                rates,
                Math.abs(first.samplePoint() - second.samplePoint()),
                rates + firstDeviation + secondDeviation,
                2 * Math.min(first.clockTolerance(), second.clockTolerance()));
    }

    /** Whether the clocks stay within what the timings bear. */
    public boolean clocksHold() {
        return differs <= bears;
    }

    /** Whether both sample at about the same place. */
    public boolean samplesAgree() {
        return sampleDifference <= NEAR_SAMPLE_POINTS;
    }
}
