/**
 * Angle sensing on a shaft: the field of a round magnet, what misplacement of magnet and sensor does to the angle, the
 * tolerances of the mount, the chain from the sensor to the control loop, and what an angle error costs the axis. Lengths
 * are metres, angles radians, fields tesla; the shaft turns about z, and the sensor sits at positive z of the magnet.
 */
@NullMarked
package servowright.engine.encoder;

import org.jspecify.annotations.NullMarked;
