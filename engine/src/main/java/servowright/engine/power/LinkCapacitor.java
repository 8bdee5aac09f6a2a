package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Ripple current in the capacitor at the bus of a three-phase bridge.
 *
 * <p><b>Formula.</b> I_c = I √{2 M [√3/(4π) + cos²φ (√3/π − 9M/16)]}, I phase RMS, M = phase peak / (V/2). <b>Valid for</b>
 * smooth phase current and a supply that takes none of the ripple; M from 0 to 2/√3. <b>Source.</b> Kolar, Round, IEE
 * Proceedings Electric Power Applications 153(4) 2006 (formula from memory).
 */
public final class LinkCapacitor {

    private LinkCapacitor() {}

    /** Capacitor current, A RMS, at a depth M referred to half the bus voltage. */
    public static double rmsAmp(double phaseRmsAmp, double depthOfHalfBus, double powerFactor) {
        Require.notNegative("phase current (RMS)", phaseRmsAmp, "A");
        Require.within("depth of modulation (of half the bus)", 0, 2 / Math.sqrt(3), depthOfHalfBus, "");
        Require.within("power factor", -1, 1, powerFactor, "");
        double root3 = Math.sqrt(3);
        double bracket =
                root3 / (4 * Math.PI) + powerFactor * powerFactor * (root3 / Math.PI - 9 * depthOfHalfBus / 16);
        return phaseRmsAmp * Math.sqrt(2 * depthOfHalfBus * bracket);
    }
}
