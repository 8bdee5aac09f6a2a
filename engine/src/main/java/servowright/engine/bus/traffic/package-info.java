/**
 * Traffic on a bus as events in time: senders with clocks of their own, queues, arbitration, errors and what they do to nodes. It checks the
 * guarantees of the analysis from outside, and makes logs of traffic whose truth is known.
 */
@NullMarked
package servowright.engine.bus.traffic;

import org.jspecify.annotations.NullMarked;
