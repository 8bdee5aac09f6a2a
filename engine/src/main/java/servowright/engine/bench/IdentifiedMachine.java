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
 * @param motors   one entry for each motor of the machine, by name
 * @param axes     one entry for each axis whose angle sensor was on the bench, by name
 * @param tests    what each bench test gave, in the order of the file
 * @param captures what each capture of the bus shows, in the order of the file
 */
public record IdentifiedMachine(
        Machine machine,
        Map<String, IdentifiedMotor> motors,
        Map<String, IdentifiedAxis> axes,
        List<TestResult> tests,
        List<CapturedBus> captures) {
    public IdentifiedMachine {
        axes = Collections.unmodifiableMap(new LinkedHashMap<>(axes));
        motors = Collections.unmodifiableMap(new LinkedHashMap<>(motors));
        tests = List.copyOf(tests);
        captures = List.copyOf(captures);
    }

    /** A machine of whose angle sensors and bus nothing is known. */
    public IdentifiedMachine(Machine machine, Map<String, IdentifiedMotor> motors, List<TestResult> tests) {
        this(machine, motors, Map.of(), tests);
    }

    /** A machine whose bus was not captured. */
    public IdentifiedMachine(
            Machine machine,
            Map<String, IdentifiedMotor> motors,
            Map<String, IdentifiedAxis> axes,
            List<TestResult> tests) {
        this(machine, motors, axes, tests, List.of());
    }

    /** The same with captures of its bus. */
    public IdentifiedMachine with(List<CapturedBus> some) {
        return new IdentifiedMachine(machine, motors, axes, tests, some);
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
