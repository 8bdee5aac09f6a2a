package servowright.engine.prediction;

import java.util.Optional;
import servowright.engine.known.Known;

/**
 * What the copper heat of a duty means for the winding.
 *
 * @param asked   RMS torque of the duty, N m
 * @param has     torque the winding may give for good, N m
 * @param current q-axis current for that torque, A
 * @param limit   winding temperature not to exceed, K
 * @param settled winding temperature under the duty, K; empty when it runs away
 * @param loss    copper loss of the duty at 20 degC, W
 */
public record Heat(Known asked, Known has, Known current, Known limit, Optional<Known> settled, Known loss) {}
