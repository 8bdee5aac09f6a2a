/** Worksheets about what an axis does over time: moves, run-outs, returned energy and heat. */
@NullMarked
package servowright.engine.worksheet.duty;

import org.jspecify.annotations.NullMarked;
