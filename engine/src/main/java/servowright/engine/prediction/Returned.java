package servowright.engine.prediction;

import java.util.Optional;
import servowright.engine.known.Known;

/**
 * What a braking axis gives back.
 *
 * @param power   largest electrical power that comes back, at most, W
 * @param current supply current that comes back at the full supply's voltage, A
 * @param energy  moving energy at top speed, J
 * @param risesTo voltage that energy lifts the capacitors to when the supply takes nothing, V, if their size is known
 */
public record Returned(Known power, Known current, Known energy, Optional<Known> risesTo) {}
