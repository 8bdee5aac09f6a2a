package servowright.engine.bus;

import servowright.engine.quantity.Require;

/**
 * Transmitter delay compensation of CAN FD: a sender reads its own bit back after the loop delay of its transceiver, which at a
 * high data rate comes after the sample point.
 *
 * <p><b>Formula.</b> Without compensation t_loop must not exceed SP · t_bit. With it the secondary sample point lies at the measured
 * loop delay plus an offset of (1 + prop + ps1) · prescaler clock periods; it is defined only for a prescaler of 1 or 2.
 * <b>Source.</b> offset and prescaler limit seen in a public kernel's bit-timing source, which cites ISO 11898-1:2015, 11.3.3.
 *
 * @param loopNs       loop delay of the transceiver, ns
 * @param sampleNs     sample point of the data bit, ns
 * @param offsetClocks secondary sample point behind the loop delay, clock periods
 * @param possible     whether the prescaler allows compensation
 */
public record DelayCompensation(double loopNs, double sampleNs, int offsetClocks, boolean possible) {
    /** From this data rate on compensation is advised, bit/s. <b>Source.</b> CiA 601-3 as repeated in controller manuals (seen). */
    public static final double ADVISED_FROM = 1e6;

    private static final int MOST_PRESCALER = 2;

    /** What a data phase needs. */
    public static DelayCompensation of(BitTiming data, double loopNs) {
        Require.notNegative("loop delay", loopNs, "ns");
        int before = 1 + data.prop() + data.ps1();
        return new DelayCompensation(
                loopNs, before * data.quantumNs(), before * data.prescaler(), data.prescaler() <= MOST_PRESCALER);
    }

    /** Whether the sender cannot read its own bits without compensation. */
    public boolean needed() {
        return loopNs > sampleNs;
    }

    /** What is left before the sample point without compensation, ns. */
    public double roomNs() {
        return sampleNs - loopNs;
    }

    /** Highest data rate without compensation, bit/s: SP / t_loop. */
    public static double highestRateWithout(double loopNs, double samplePoint) {
        Require.positive("loop delay", loopNs, "ns");
        Require.within("sample point", 0, 1, samplePoint, "");
        return 1e9 * samplePoint / loopNs;
    }
}
