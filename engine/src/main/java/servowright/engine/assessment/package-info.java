/** The door: runs identification, prediction, judgement and findings, and returns one immutable assessment. */
@NullMarked
package servowright.engine.assessment;

import org.jspecify.annotations.NullMarked;
