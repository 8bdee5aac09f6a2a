/**
 * Quantities as people write them: a value with its dimension, units and their spelling, tolerances, and how a figure
 * was stated (its basis). Inside the engine everything is SI; this package is the border.
 */
@NullMarked
package servowright.engine.quantity;

import org.jspecify.annotations.NullMarked;
