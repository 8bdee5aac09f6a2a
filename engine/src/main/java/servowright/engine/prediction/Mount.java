package servowright.engine.prediction;

import java.util.Optional;
import servowright.engine.known.Known;

/**
 * The magnet of an axis before its sensor.
 *
 * @param weakest     flux density at the sensing element when the magnet is warmest
 * @param strongest   flux density there when it is coldest
 * @param least       least field the sensor works in, if stated
 * @param most        greatest field the sensor works in, if stated
 * @param bareGap     flux density if the stated gap were that to the element
 * @param depthStated whether the depth of the element below its package is known
 * @param offsetError second harmonic of the electrical angle from the stated sensor offset, if both are known
 * @param tiltError   first harmonic of the electrical angle from one degree of tilt and the same offset
 */
public record Mount(
        Known weakest,
        Known strongest,
        Optional<Known> least,
        Optional<Known> most,
        Known bareGap,
        boolean depthStated,
        Optional<Known> offsetError,
        Optional<Known> tiltError) {}
