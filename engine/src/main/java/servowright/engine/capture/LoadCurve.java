package servowright.engine.capture;

/**
 * Load over time.
 *
 * @param startNs stamp of the first frame
 * @param stepNs length of a step
 * @param shares for each step the share of time in which the bus was held; handed over and not to be written to
 */
public record LoadCurve(long startNs, long stepNs, double[] shares) {}
