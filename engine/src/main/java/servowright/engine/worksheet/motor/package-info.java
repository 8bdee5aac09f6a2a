/** Worksheets about the motor: its constants, its winding, its poles, and how fast and hard it turns. */
@NullMarked
package servowright.engine.worksheet.motor;

import org.jspecify.annotations.NullMarked;
