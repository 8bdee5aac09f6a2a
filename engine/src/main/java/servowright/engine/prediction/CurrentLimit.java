package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * A limit of the motor current, the lower of what drive and motor stand.
 *
 * @param current phase peak, A
 * @param setBy   what sets it, in words: {@code drive palm}
 */
public record CurrentLimit(Known current, String setBy) {}
