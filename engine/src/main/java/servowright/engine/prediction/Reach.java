package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * How fast a motor gets with the supply empty.
 *
 * @param asked     top speed of the duty at the motor, rad/s
 * @param reaches   speed at the duty's peak torque, rad/s; zero when the resistance alone takes the voltage
 * @param noLoad    speed without any torque, rad/s
 * @param supply    supply voltage counted with, V
 * @param needed    supply voltage at which the asked speed would be reached, V
 * @param reserve   share of the voltage kept for control
 */
public record Reach(Known asked, Known reaches, Known noLoad, Known supply, Known needed, Known reserve) {}
