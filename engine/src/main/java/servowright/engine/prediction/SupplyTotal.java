package servowright.engine.prediction;

import servowright.engine.known.Known;

/**
 * What all axes together mean for the supply, each with its heaviest duty and all at the same time.
 *
 * @param peak     supply current, all accelerating at once, A
 * @param mean     mean supply current, at most, A
 * @param returned current that comes back, all braking at once, at most, A
 */
public record SupplyTotal(Known peak, Known mean, Known returned) {}
