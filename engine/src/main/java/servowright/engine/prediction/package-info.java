/**
 * Predictions: one study answers one question about an axis, a duty, a drive or a motor. This package owns no formula; it
 * chooses which figures of the machine go into the formulas of physics, says what it had to assume, and names what is
 * missing when there is no answer yet.
 */
@NullMarked
package servowright.engine.prediction;

import org.jspecify.annotations.NullMarked;
