package servowright.engine.procedure;

import servowright.engine.bench.MotorParameter;

/**
 * What hangs on a parameter of a motor.
 *
 * @param finding key of the finding it weighs most in: {@code lift/speed-reach}
 * @param share   of the variance of the judged figure; 1 where the finding lacks the parameter altogether
 * @param weight  how much it matters, from 0 to 1
 * @param matters whether a narrower figure could change the verdict
 */
public record Stake(String motor, MotorParameter what, String finding, double share, double weight, boolean matters) {}
