package servowright.engine.thermal;

import servowright.engine.quantity.Require;

/**
 * How much more than its continuous torque a motor may give for part of the time, by one time constant.
 *
 * <p><b>Formulas.</b> Short time (S2): 1/√(1 − exp(−t/τ)). Periodic (S3), cycle t_c, on for the share c:
 * √[(1 − exp(−t_c/τ)) / (1 − exp(−c t_c/τ))], which tends to 1/√c when the cycle is short against τ. <b>Valid for</b> loss
 * proportional to torque squared, one time constant, cold start in S2. Bursts of seconds heat the winding alone: use
 * {@link TwoNode}. <b>Source.</b> Duty types as in IEC 60034-1 (definitions seen); formulas derived.
 */
public final class DutyTorque {

    private DutyTorque() {}

    /** Torque factor for one run from cold. */
    public static double shortTimeFactor(double onSecond, double tauSecond) {
        Require.positive("time on", onSecond, "s");
        return 1 / Math.sqrt(-Math.expm1(-onSecond / Require.positive("time constant", tauSecond, "s")));
    }

    /** Torque factor for a repeated cycle, {@code share} of it on. */
    public static double periodicFactor(double cycleSecond, double share, double tauSecond) {
        Require.positive("cycle", cycleSecond, "s");
        Require.positive("share of time on", share, "");
        Require.within("share of time on", 0, 1, share, "");
        double cycles = cycleSecond / Require.positive("time constant", tauSecond, "s");
        return Math.sqrt(Math.expm1(-cycles) / Math.expm1(-share * cycles));
    }
}
