package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * What a drive draws from its supply. Not the phase current: at standstill 75 A in the motor can be 14 A from the supply.
 *
 * <p><b>Formula.</b> I = (T ω + (3/2) R i² + P_idle) / V, with i phase peak. <b>Valid for</b> settled operation; ripple,
 * iron loss and the bridge's conduction and switching losses are in P_idle as far as they are known. A negative current
 * means that power comes back. <b>Source.</b> Power balance.
 *
 * @param mechanicalWatt T ω at the air gap
 * @param copperWatt     (3/2) R i²
 * @param idleWatt       drive electronics and further losses
 * @param busAmp         mean current from the supply
 */
public record SupplyCurrent(double mechanicalWatt, double copperWatt, double idleWatt, double busAmp) {

    /**
     * Supply current at an operating point.
     *
     * @param torqueNewtonMetre air-gap torque, motor side, signed
     * @param mechRadPerS       shaft speed, signed
     * @param phasePeakAmp      phase current, peak
     * @param phaseOhm          resistance of one phase of the equivalent star, warm
     * @param idleWatt          losses that do not depend on the motor current
     * @param busVolt           bus voltage
     */
    public static SupplyCurrent of(
            double torqueNewtonMetre,
            double mechRadPerS,
            double phasePeakAmp,
            double phaseOhm,
            double idleWatt,
            double busVolt) {
        Require.finite("torque", torqueNewtonMetre, "N m");
        Require.finite("shaft speed", mechRadPerS, "rad/s");
        Require.notNegative("idle power", idleWatt, "W");
        Require.positive("bus voltage", busVolt, "V");
        double mechanical = torqueNewtonMetre * mechRadPerS;
        double copper = CopperLoss.watt(phasePeakAmp, phaseOhm);
        return new SupplyCurrent(mechanical, copper, idleWatt, (mechanical + copper + idleWatt) / busVolt);
    }

    /** Share of the power from the supply that reaches the shaft; 0 when standing or braking. */
    public double efficiency() {
        double total = mechanicalWatt + copperWatt + idleWatt;
        return mechanicalWatt > 0 ? mechanicalWatt / total : 0;
    }
}
