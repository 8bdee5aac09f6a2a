package servowright.engine.capture;

/**
 * How often times of each length were seen; bins without any are left out. The arrays are handed over and not to be written to.
 *
 * @param middleNs middle of each bin; bins are 4.4 % wide
 * @param counts how many fell into it
 */
public record Histogram(double[] middleNs, long[] counts) {}
