/**
 * The CAN bus: lengths of frames, bit timing, the physical layer, and guaranteed response times.
 *
 * <p>Times are whole nanoseconds and lengths whole bits; ceilings are taken in integers, since a ceiling of a binary
 * floating-point quotient goes wrong at exact multiples. A frame's length includes the three bits of intermission unless
 * said otherwise. Classical frames follow ISO 11898-1; FD frames ISO 11898-1:2015 with stuff count. The texts of the
 * standards were not opened; field lists come from public kernel sources that cite them.
 */
@NullMarked
package servowright.engine.bus;

import org.jspecify.annotations.NullMarked;
