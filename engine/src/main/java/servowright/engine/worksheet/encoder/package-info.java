/** Worksheets of magnet, mount and encoder. */
@NullMarked
package servowright.engine.worksheet.encoder;

import org.jspecify.annotations.NullMarked;
