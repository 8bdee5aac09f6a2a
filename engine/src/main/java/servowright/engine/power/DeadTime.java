package servowright.engine.power;

import servowright.engine.quantity.Require;

/**
 * Voltage that a bridge loses because both switches of a leg are off for a moment at each edge.
 *
 * <p><b>Formula.</b> Mean error of a leg ΔV = V t_d f sign(i); it is a square wave in step with the current, with
 * fundamental (4/π) ΔV and the orders 6k ± 1 in the phase, 6k in dq. <b>Valid for</b> currents well above the ripple; near
 * zero current the error is smaller. Drops of the devices come on top. <b>Source.</b> Volt-second balance, derived.
 */
public final class DeadTime {

    private DeadTime() {}

    /** Mean error of one leg, V. */
    public static double legVolt(double busVolt, double deadSecond, double switchingHertz) {
        Require.positive("bus voltage", busVolt, "V");
        Require.notNegative("dead time", deadSecond, "s");
        return busVolt * deadSecond * Require.positive("switching frequency", switchingHertz, "Hz");
    }

    /** Fundamental of the error in a phase, V peak. */
    public static double fundamentalVolt(double busVolt, double deadSecond, double switchingHertz) {
        return 4 / Math.PI * legVolt(busVolt, deadSecond, switchingHertz);
    }

    /** Resistance that one voltage-current point shows too much because of a leg error, ohm. */
    public static double resistanceBiasOhm(double legVolt, double phaseAmp) {
        Require.notNegative("leg error", legVolt, "V");
        return legVolt / Require.positive("phase current", phaseAmp, "A");
    }
}
