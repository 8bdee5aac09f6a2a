/**
 * Traffic that was captured on a CAN bus: frames as they pass by, and what a run of them shows about load, periods, errors, the
 * clock and the nodes. Everything works on one pass and holds an amount that does not grow with the capture. Times are whole
 * nanoseconds.
 */
@NullMarked
package servowright.engine.capture;

import org.jspecify.annotations.NullMarked;
