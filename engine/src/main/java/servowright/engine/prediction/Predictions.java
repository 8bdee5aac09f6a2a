package servowright.engine.prediction;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Machine;

/**
 * Everything that is predicted of a machine.
 *
 * @param axes    in the order of the machine
 * @param windows per drive, in the order of the machine: the supply against what it takes
 * @param slots   per motor, in the order of the machine: whether slots, magnets and detents go together
 * @param total   all axes together at the supply
 */
public record Predictions(
        IdentifiedMachine identified,
        List<AxisPrediction> axes,
        Map<String, Outcome<SupplyWindow>> windows,
        Map<String, Outcome<SlotsAndPoles>> slots,
        Outcome<SupplyTotal> total) {
    public Predictions {
        axes = List.copyOf(axes);
        windows = Collections.unmodifiableMap(new LinkedHashMap<>(windows));
        slots = Collections.unmodifiableMap(new LinkedHashMap<>(slots));
    }

    /** Asks every question of every part. */
    public static Predictions of(IdentifiedMachine identified) {
        Machine machine = identified.machine();
        Map<String, Outcome<SupplyWindow>> windows = new LinkedHashMap<>();
        machine.drives().forEach((name, drive) -> windows.put(name, SupplyWindowStudy.of(machine, drive)));
        Map<String, Outcome<SlotsAndPoles>> slots = new LinkedHashMap<>();
        identified
                .motors()
                .forEach((name, motor) -> Optional.ofNullable(machine.motors().get(name))
                        .ifPresent(declared -> slots.put(name, SlotsAndPolesStudy.of(declared, motor))));
        List<AxisPrediction> axes = machine.axes().values().stream()
                .map(axis -> AxisPrediction.of(AxisParts.of(identified, axis)))
                .toList();
        return new Predictions(identified, axes, windows, slots, SupplyTotalStudy.of(axes));
    }

    public Machine machine() {
        return identified.machine();
    }
}
