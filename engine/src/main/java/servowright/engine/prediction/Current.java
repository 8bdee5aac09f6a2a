package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * Motor current for a duty, on the q axis.
 *
 * @param peak           for the peak torque, A
 * @param rms            for the RMS torque, A, still as phase peak
 * @param torqueConstant torque per q-axis ampere with warm magnets, N m/A
 */
public record Current(Known peak, Known rms, Known torqueConstant) {}
