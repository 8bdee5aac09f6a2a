package servowright.engine.bench;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.machine.Machine;

/**
 * The machine with what the bench knows of it.
 *
 * @param motors one entry for each motor of the machine, by name
 * @param axes   one entry for each axis whose angle sensor was on the bench, by name
 * @param tests  what each bench test gave, in the order of the file
 */
public record IdentifiedMachine(
        Machine machine,
        Map<String, IdentifiedMotor> motors,
        Map<String, IdentifiedAxis> axes,
        List<TestResult> tests) {
    public IdentifiedMachine {
        axes = Collections.unmodifiableMap(new LinkedHashMap<>(axes));
        motors = Collections.unmodifiableMap(new LinkedHashMap<>(motors));
        tests = List.copyOf(tests);
    }

    /** A machine of whose angle sensors nothing is known. */
    public IdentifiedMachine(Machine machine, Map<String, IdentifiedMotor> motors, List<TestResult> tests) {
        this(machine, motors, Map.of(), tests);
    }

    /** What the bench knows of the angle sensor of an axis. */
    public IdentifiedAxis axis(String name) {
        return Optional.ofNullable(axes.get(name)).orElseGet(() -> IdentifiedAxis.untested(name));
    }

    /** A motor by its name, if the machine has it. */
    public Optional<IdentifiedMotor> motor(String name) {
        return Optional.ofNullable(motors.get(name));
    }
}
