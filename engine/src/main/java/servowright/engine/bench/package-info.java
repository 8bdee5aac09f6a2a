/**
 * Identification: machine and recordings to parameters with uncertainty. This package owns no formula; each bench test
 * hands its readings to physics and numerics, and every parameter keeps all its candidates and how each came about.
 */
@NullMarked
package servowright.engine.bench;

import org.jspecify.annotations.NullMarked;
