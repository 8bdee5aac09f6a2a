/**
 * The permanent-magnet motor itself: its constants and their bases, its winding, its operating point and its speed. All
 * figures are per phase of the equivalent star, amplitude-invariant, current positive into the motor, d on the magnet
 * north pole and q 90 electrical degrees ahead; flux linkage is the phase peak.
 */
@NullMarked
package servowright.engine.motor;

import org.jspecify.annotations.NullMarked;
