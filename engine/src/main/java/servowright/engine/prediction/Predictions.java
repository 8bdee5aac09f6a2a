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
 * @param stated  per motor, in the order of the machine: figures that have a basis, and how they close with the bench
 * @param total   all axes together at the supply
 * @param bus     the traffic of the bus
 */
public record Predictions(
        IdentifiedMachine identified,
        List<AxisPrediction> axes,
        Map<String, Outcome<SupplyWindow>> windows,
        Map<String, Outcome<SlotsAndPoles>> slots,
        Map<String, List<StatedFigure>> stated,
        Outcome<SupplyTotal> total,
        Outcome<BusPlan> bus) {
    public Predictions {
        axes = List.copyOf(axes);
        windows = Collections.unmodifiableMap(new LinkedHashMap<>(windows));
        slots = Collections.unmodifiableMap(new LinkedHashMap<>(slots));
        stated = Collections.unmodifiableMap(new LinkedHashMap<>(stated));
    }

    /** Asks every question of every part. */
    public static Predictions of(IdentifiedMachine identified) {
        Machine machine = identified.machine();
        Map<String, Outcome<SupplyWindow>> windows = new LinkedHashMap<>();
        machine.drives().forEach((name, drive) -> windows.put(name, SupplyWindowStudy.of(machine, drive)));
        Map<String, Outcome<SlotsAndPoles>> slots = new LinkedHashMap<>();
        Map<String, List<StatedFigure>> stated = new LinkedHashMap<>();
        machine.motors()
                .forEach((name, motor) -> Optional.ofNullable(
                                identified.motors().get(name))
                        .ifPresent(found -> {
                            slots.put(name, SlotsAndPolesStudy.of(motor, found));
                            stated.put(name, BasisStudy.of(motor, found));
                        }));
        List<AxisPrediction> axes = machine.axes().values().parallelStream()
                .map(axis -> AxisPrediction.of(AxisParts.of(identified, axis)))
                .toList();
        return new Predictions(
                identified, axes, windows, slots, stated, SupplyTotalStudy.of(axes), BusStudy.of(machine));
    }

    public Machine machine() {
        return identified.machine();
    }
}
