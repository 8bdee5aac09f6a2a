package servowright.engine.motion;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.quantity.Require;

/**
 * What a cycle of motion asks of the motor.
 *
 * <p><b>Formula.</b> RMS torque √(Σ T_k² t_k / Σ t_k), the torque being constant in each stretch. It stands for the heat
 * of the copper only if the whole cycle is short against the winding's time constant; longer cycles need a thermal model.
 *
 * @param torquesNewtonMetre torque of each stretch, motor side, signed
 * @param cycleSecond        sum of the durations
 * @param rmsNewtonMetre     RMS torque
 * @param peakNewtonMetre    largest torque, without sign
 * @param peakRadPerS        largest motor speed, without sign
 * @param rmsRadPerS         RMS motor speed over the cycle
 * @param drivingWatt        largest power into the mechanics
 * @param brakingWatt        largest power back from the mechanics, not negative
 */
public record MotorDuty(
        List<Double> torquesNewtonMetre,
        double cycleSecond,
        double rmsNewtonMetre,
        double peakNewtonMetre,
        double peakRadPerS,
        double rmsRadPerS,
        double drivingWatt,
        double brakingWatt) {

    /** Copies the list. */
    public MotorDuty {
        torquesNewtonMetre = List.copyOf(torquesNewtonMetre);
    }

    /** The duty of a cycle of stretches. */
    public static MotorDuty of(GearedAxis axis, List<Stretch> cycle) {
        Require.atLeast("stretches of a cycle", 1, cycle.size());
        List<Double> torques = new ArrayList<>();
        double n = axis.motorTurnsPerLoadTurn();
        double time = 0;
        double torqueSquare = 0;
        double speedSquare = 0;
        double peakTorque = 0;
        double peakSpeed = 0;
        double driving = 0;
        double braking = 0;
        for (Stretch stretch : cycle) {
            double torque = axis.motorNewtonMetre(stretch);
            double from = n * stretch.startRadPerS();
            double to = n * stretch.endRadPerS();
            torques.add(torque);
            time += stretch.second();
            torqueSquare += torque * torque * stretch.second();
            speedSquare += (from * from + from * to + to * to) / 3 * stretch.second();
            peakTorque = Math.max(peakTorque, Math.abs(torque));
            peakSpeed = Math.max(peakSpeed, Math.max(Math.abs(from), Math.abs(to)));
            driving = Math.max(driving, Math.max(torque * from, torque * to));
            braking = Math.max(braking, Math.max(-torque * from, -torque * to));
        }
        return new MotorDuty(
                torques,
                time,
                Math.sqrt(torqueSquare / time),
                peakTorque,
                peakSpeed,
                Math.sqrt(speedSquare / time),
                driving,
                braking);
    }
}
