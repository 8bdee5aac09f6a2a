/** What an axis has to do over time, and what torque and speed its motor must give for it through a gear. */
@NullMarked
package servowright.engine.motion;

import org.jspecify.annotations.NullMarked;
