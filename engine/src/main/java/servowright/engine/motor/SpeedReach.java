package servowright.engine.motor;

import java.util.OptionalDouble;
import servowright.engine.quantity.Require;

/**
 * The speed at which a winding with given currents uses up a given voltage, and how fast it may turn with the bridge let
 * go. The voltage is that of the bridge after modulation and reserve, phase peak.
 */
public final class SpeedReach {

    private SpeedReach() {}

    /**
     * Mechanical speed at which the settled voltage reaches the limit, in rad/s; empty if the resistance alone needs more.
     *
     * <p><b>Formula.</b> |v|² = V² is quadratic in ω_e: a = (L_q i_q)² + (L_d i_d + λ)², b = 2 R i_q [λ + (L_d − L_q) i_d],
     * c = R²(i_d² + i_q²) − V², ω_e = (−b + √(b² − 4ac)) / 2a, ω = ω_e / p. With R = 0 it is V / √a, the base speed of the
     * textbooks. <b>Valid</b> as {@link OperatingPoint}; the root is the highest speed at these currents in motoring
     * (i_q above 0); with i_q below 0 it is the highest braking speed, which is higher.
     *
     * @param phasePeakVolt voltage limit, phase peak
     */
    public static OptionalDouble mechRadPerS(Winding winding, double dAmp, double qAmp, double phasePeakVolt) {
        Require.finite("d current", dAmp, "A");
        Require.finite("q current", qAmp, "A");
        Require.positive("voltage limit (phase peak)", phasePeakVolt, "V");
        double r = winding.phaseOhm();
        double linkedD = winding.dHenry() * dAmp + winding.fluxWeberPeak();
        double linkedQ = winding.qHenry() * qAmp;
        double a = linkedQ * linkedQ + linkedD * linkedD;
        double half = r * (qAmp * linkedD - dAmp * linkedQ);
        double c = r * r * (dAmp * dAmp + qAmp * qAmp) - phasePeakVolt * phasePeakVolt;
        if (!(c <= 0 && a > 0)) {
            return OptionalDouble.empty();
        }
        // The form without cancellation for b > 0: with b = 2 half, ω = −c / (half + √(half² − ac)).
        double root = Math.sqrt(half * half - a * c);
        double electric = half > 0 ? -c / (half + root) : (root - half) / a;
        return OptionalDouble.of(electric / winding.polePairs());
    }

    /** No-load speed without any current, V / (p λ), in mechanical rad/s. */
    public static double idealNoLoadMechRadPerS(MotorConstants motor, double phasePeakVolt) {
        return Require.positive("voltage limit (phase peak)", phasePeakVolt, "V")
                / motor.emfPhasePeakVoltSecondPerRad();
    }

    /**
     * Peak of the line voltage that the turning magnets make on their own, √3 p λ ω: what a bridge that lets go has to
     * stand, whatever field weakening did before.
     */
    public static double openLinePeakVolt(MotorConstants motor, double mechRadPerS) {
        Require.finite("shaft speed", mechRadPerS, "rad/s");
        return Math.sqrt(3) * motor.emfPhasePeakVoltSecondPerRad() * Math.abs(mechRadPerS);
    }

    /**
     * Mechanical speed above which the diodes of a released bridge charge a bus: (V_bus + 2 V_diode) / (√3 p λ).
     *
     * @param busVolt   bus voltage the motor must not exceed
     * @param diodeVolt forward drop of one diode
     */
    public static double feedingMechRadPerS(MotorConstants motor, double busVolt, double diodeVolt) {
        Require.positive("bus voltage", busVolt, "V");
        Require.notNegative("diode drop", diodeVolt, "V");
        return (busVolt + 2 * diodeVolt) / (Math.sqrt(3) * motor.emfPhasePeakVoltSecondPerRad());
    }
}
