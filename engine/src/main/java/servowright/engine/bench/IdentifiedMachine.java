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
 * @param tests  what each bench test gave, in the order of the file
 */
public record IdentifiedMachine(Machine machine, Map<String, IdentifiedMotor> motors, List<TestResult> tests) {
    public IdentifiedMachine {
        motors = Collections.unmodifiableMap(new LinkedHashMap<>(motors));
        tests = List.copyOf(tests);
    }

    /** A motor by its name, if the machine has it. */
    public Optional<IdentifiedMotor> motor(String name) {
        return Optional.ofNullable(motors.get(name));
    }
}
