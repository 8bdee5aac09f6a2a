package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * What the control has to follow at the top speed of a duty.
 *
 * @param frequency electrical frequency, Hz
 * @param steps     steps of the current loop in one electrical turn
 * @param angleLost electrical angle the rotor moves between measurement and voltage, rad, if nothing compensates it
 */
public record Commutation(Known frequency, Known steps, Known angleLost) {}
