package servowright.engine.machine;

import java.util.Optional;
import servowright.engine.known.Place;

/**
 * A motor as declared.
 *
 * @param magnetMaterial what the rotor magnets are made of, if said
 */
public record Motor(String name, Place place, Figures<MotorFigure> figures, Optional<MagnetMaterial> magnetMaterial) {}
