/**
 * From the supply to the terminals: what voltage a bridge can make of a bus, what current it draws, what the switching
 * adds. Nothing here knows a motor; torque, speed and resistance come in as numbers.
 */
@NullMarked
package servowright.engine.power;

import org.jspecify.annotations.NullMarked;
