/** How warm a loss makes a winding and a housing, and what loss a temperature limit allows. Temperatures in kelvin. */
@NullMarked
package servowright.engine.thermal;

import org.jspecify.annotations.NullMarked;
