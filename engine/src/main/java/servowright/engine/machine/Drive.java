package servowright.engine.machine;

import java.util.Optional;
import servowright.engine.known.Place;

/**
 * A drive as declared: bridge and controller.
 *
 * @param modulation how it makes its voltages, if said
 */
public record Drive(String name, Place place, Figures<DriveFigure> figures, Optional<Modulation> modulation) {}
