/** Gains of the control loops from the plant they close over, and what stability margin they leave. */
@NullMarked
package servowright.engine.control;

import org.jspecify.annotations.NullMarked;
