package servowright.engine.capture;

/**
 * How full a bus was over a window of time.
 *
 * @param windowNs length of the window
 * @param worst highest share of the window in which the bus was held, 1 for all of it; above 1 the stamps are not those of the bus
 * @param worstEndNs stamp at which the worst window ended
 */
public record Load(long windowNs, double worst, long worstEndNs) {}
