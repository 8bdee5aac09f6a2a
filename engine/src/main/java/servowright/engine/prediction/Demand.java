package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * What a duty asks of its motor, at the motor shaft.
 *
 * @param peakTorque   largest torque, N m
 * @param rmsTorque    RMS torque over the cycle, N m
 * @param topSpeed     largest speed, rad/s; zero for a hold
 * @param rmsSpeed     RMS speed over the cycle, rad/s
 * @param peakPower    largest power into the mechanics, W
 * @param brakingPower largest power back from the mechanics, W
 * @param atRest       true for a hold: one phase may carry the peak of the current all the time
 */
public record Demand(
        Known peakTorque,
        Known rmsTorque,
        Known topSpeed,
        Known rmsSpeed,
        Known peakPower,
        Known brakingPower,
        boolean atRest) {}
