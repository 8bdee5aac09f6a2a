/** Worksheets about the drive between supply and motor: voltage it loses, current it draws, ripple, heat and its current loop. */
@NullMarked
package servowright.engine.worksheet.drive;

import org.jspecify.annotations.NullMarked;
