package servowright.engine.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Place;

/**
 * One axis: motor, drive, sensor and load.
 *
 * @param motor  name of its motor, if said; always one that is declared
 * @param drive  name of its drive, if said; always one that is declared
 * @param sensor name of its sensor, if said; always one that is declared
 * @param duties by name, in the order of the file
 */
public record Axis(
        String name,
        Place place,
        Optional<String> motor,
        Optional<String> drive,
        Optional<String> sensor,
        Figures<AxisFigure> figures,
        Map<String, Duty> duties) {
    public Axis {
        duties = Collections.unmodifiableMap(new LinkedHashMap<>(duties));
    }
}
