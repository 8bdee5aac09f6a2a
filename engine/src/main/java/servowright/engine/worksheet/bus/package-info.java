/** Worksheets of the CAN bus: frame lengths, response times, bit timing, terminators and cable. */
@NullMarked
package servowright.engine.worksheet.bus;

import org.jspecify.annotations.NullMarked;
