package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Voltage of a supply with inner resistance under a load that takes constant power, as a drive does.
 *
 * <p><b>Formula.</b> V² − V₀ V + P R = 0, the upper root V = V₀/2 + √(V₀²/4 − P R). The most power the supply can give is
 * V₀²/(4 R), at V₀/2; beyond it there is no operating point, and V₀/2 is returned: the voltage on the way down. <b>Valid
 * for</b> a settled load; a battery's slow recovery is not in it. <b>Source.</b> Maximum power theorem, derived.
 */
public final class SupplySag {

    private SupplySag() {}

    /**
     * Voltage under load.
     *
     * @param openVolt voltage without load, V₀
     * @param ohm      inner resistance R, V₀ to the drive
     * @param watt     power P taken; negative when it comes back, which raises the voltage
     */
    public static double volt(double openVolt, double ohm, double watt) {
        Require.positive("open voltage", openVolt, "V");
        Require.notNegative("inner resistance", ohm, "ohm");
        Require.finite("power", watt, "W");
        double half = openVolt / 2;
        return half + Math.sqrt(Math.max(0, half * half - watt * ohm));
    }

    /** Most power the supply can give, V₀²/(4 R), W. */
    public static double mostWatt(double openVolt, double ohm) {
        Require.positive("open voltage", openVolt, "V");
        return openVolt * openVolt / (4 * Require.positive("inner resistance", ohm, "ohm"));
    }
}
