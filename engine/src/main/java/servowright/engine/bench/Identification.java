package servowright.engine.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Machine;
import servowright.engine.machine.Motor;
import servowright.engine.recording.Recording;

/** From what is declared and what was recorded to what is known of each motor. */
public final class Identification {
    private Identification() {}

    /**
     * Reduces every bench test and chooses, for each motor and parameter, the best value.
     *
     * @param recordings by the name under which the tests refer to them ({@link BenchTest#recording()}); one that is
     *                   absent makes its test say so
     */
    public static IdentifiedMachine identify(
            Machine machine, List<BenchTest> tests, Map<String, Recording> recordings) {
        Map<String, IdentifiedMotor> motors = new LinkedHashMap<>();
        Map<String, TestResult> results = new LinkedHashMap<>();
        for (Motor motor : machine.motors().values()) {
            List<BenchTest> own =
                    tests.stream().filter(t -> t.motor().equals(motor.name())).toList();
            MotorIdentification identification = new MotorIdentification(motor, own, recordings);
            motors.put(motor.name(), identification.identified());
            identification.results().forEach(r -> results.put(r.test().id(), r));
        }
        List<TestResult> inOrder = new ArrayList<>();
        for (BenchTest test : tests) {
            TestResult result = results.get(test.id());
            if (result != null) {
                inOrder.add(result);
            }
        }
        return new IdentifiedMachine(machine, motors, inOrder);
    }
}
