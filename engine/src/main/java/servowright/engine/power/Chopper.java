package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Current of a motor behind a chopper that lowers the voltage of its supply.
 *
 * <p><b>Formula.</b> The chopper passes power on, U_s I_s = U I, so that the motor's mean current is I = I_s U_s / U. <b>Valid for</b> a
 * motor current that never stops within a period, and losses of the chopper that are small or counted with the motor. <b>Source.</b>
 * Power balance of a buck converter in continuous conduction: R. W. Erickson, D. Maksimović, "Fundamentals of Power Electronics", 2nd ed.
 * 2001, chapter 2 (recalled).
 */
public final class Chopper {
    private Chopper() {}

    /**
     * Motor ampere per supply ampere.
     *
     * @param supplyVolt U_s
     * @param motorVolt  U, mean voltage at the motor, not above that of the supply
     */
    public static double motorPerSupplyAmp(double supplyVolt, double motorVolt) {
        Require.positive("voltage of the supply", supplyVolt, "V");
        return supplyVolt / Require.within("mean voltage at the motor", 1e-9 * supplyVolt, supplyVolt, motorVolt, "V");
    }
}
