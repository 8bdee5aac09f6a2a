package servowright.engine.bus.traffic;

/**
 * What became of one stream.
 *
 * @param sent       frames that got through
 * @param lost       messages that found the queue full, or were due while their node was off
 * @param worstNs    longest time from an event to the end of its frame, ns; 0 when none got through
 * @param meanNs     mean of the same, ns
 */
public record StreamFigures(long sent, long lost, long worstNs, double meanNs) {}
