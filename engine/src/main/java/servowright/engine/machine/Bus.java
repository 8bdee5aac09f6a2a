package servowright.engine.machine;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * The bus as declared.
 *
 * @param ids          how messages without an identifier get one, if said
 * @param stoppedQueue what becomes of commands queued while the axes are stopped, if said
 * @param messages     by name, in the order of the file
 * @param controllers  by node, in the order of the file
 */
public record Bus(
        Figures<BusFigure> figures,
        Optional<IdScheme> ids,
        Optional<StoppedQueue> stoppedQueue,
        Map<String, BusMessage> messages,
        Map<String, BusController> controllers) {
    public Bus {
        messages = Collections.unmodifiableMap(new LinkedHashMap<>(messages));
        controllers = Collections.unmodifiableMap(new LinkedHashMap<>(controllers));
    }

    /** A machine whose bus nothing is known of. */
    public static Bus none() {
        return new Bus(Figures.none(), Optional.empty(), Optional.empty(), Map.of(), Map.of());
    }
}
