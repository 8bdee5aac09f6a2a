/** Verdicts: an interval against a limit. */
@NullMarked
package servowright.engine.acceptance;

import org.jspecify.annotations.NullMarked;
