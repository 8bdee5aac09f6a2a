package servowright.engine.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The machine as declared. Every part may be absent and every map empty; references between parts always resolve.
 *
 * @param name   what it is called
 * @param about  a sentence or two; may be empty
 * @param supply what feeds it, if said
 */
public record Machine(
        String name,
        String about,
        Figures<SurroundingsFigure> surroundings,
        Optional<Supply> supply,
        Map<String, Motor> motors,
        Map<String, Drive> drives,
        Map<String, Sensor> sensors,
        Map<String, Axis> axes,
        Bus bus) {
    public Machine {
        motors = kept(motors);
        drives = kept(drives);
        sensors = kept(sensors);
        axes = kept(axes);
    }

    private static <T> Map<String, T> kept(Map<String, T> parts) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(parts));
    }
}
