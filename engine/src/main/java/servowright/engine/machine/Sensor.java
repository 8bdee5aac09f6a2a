package servowright.engine.machine;

import java.util.Optional;
import servowright.engine.known.Place;

/** An angle sensor as declared. */
public record Sensor(String name, Place place, Figures<SensorFigure> figures, Optional<SensorKind> kind) {}
