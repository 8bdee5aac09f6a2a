package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * What an axis takes from its supply during a duty, with the supply at its lowest voltage.
 *
 * @param peakPower   at peak torque and top speed together, W
 * @param meanPower   upper bound of the mean over the cycle, W
 * @param peakCurrent supply current at the peak power, A
 * @param meanCurrent supply current at the mean power, A
 * @param voltage     supply voltage under the peak current, V
 */
public record Draw(Known peakPower, Known meanPower, Known peakCurrent, Known meanCurrent, Known voltage) {}
