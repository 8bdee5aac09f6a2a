package servowright.engine.prediction;

import java.util.Optional;
import servowright.engine.known.Known;

/**
 * What a turning motor does to the supply lines when the bridge lets go.
 *
 * @param openPeak line voltage of the turning magnets at the duty's top speed, peak, V
 * @param most     voltage the drive stands: the lower of its window and its trip, V
 * @param full     highest supply voltage, V; above it current flows back
 * @param feeding  motor speed at which the magnets reach what the drive stands, rad/s
 * @param driven   true if the load can turn the motor by itself
 */
public record Release(Known openPeak, Known most, Optional<Known> full, Known feeding, boolean driven) {}
