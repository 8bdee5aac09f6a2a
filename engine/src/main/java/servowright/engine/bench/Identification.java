package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
import servowright.engine.known.Known;
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
        List<AxisIdentification> axes = machine.axes().values().stream()
                .map(axis -> new AxisIdentification(machine, axis, tests, recordings))
                .toList();
        Map<String, IdentifiedMotor> motors = new LinkedHashMap<>();
        Map<String, TestResult> results = new LinkedHashMap<>();
        for (Done one : motors(machine, tests, recordings, axes)) {
            motors.put(one.motor().name(), one.motor());
            one.results().forEach(r -> results.put(r.test().id(), r));
        }
        Map<String, IdentifiedAxis> sensed = new LinkedHashMap<>();
        for (AxisIdentification axis : axes) {
            Optional<Known> pairs = Optional.ofNullable(motors.get(axis.motor()))
                    .flatMap(m -> m.best(MotorParameter.POLE_PAIRS).found());
            IdentifiedAxis found = axis.identified(pairs);
            axis.results().forEach(r -> results.put(r.test().id(), r));
            if (!axis.results().isEmpty()) {
                sensed.put(found.name(), found);
            }
        }
        List<TestResult> inOrder = new ArrayList<>();
        for (BenchTest test : tests) {
            TestResult result = results.get(test.id());
            if (result != null) {
                inOrder.add(result);
            }
        }
        return new IdentifiedMachine(machine, motors, sensed, inOrder);
    }

    /** Side by side; those with most tests are begun first, for they take longest. In the order of the machine. */
    private static List<Done> motors(
            Machine machine, List<BenchTest> tests, Map<String, Recording> recordings, List<AxisIdentification> axes) {
        Map<String, ForkJoinTask<Done>> each = new LinkedHashMap<>();
        for (Motor motor : machine.motors().values()) {
            each.put(motor.name(), ForkJoinTask.adapt(() -> Done.of(motor, tests, recordings, aligned(motor, axes))));
        }
        Comparator<String> most = Comparator.comparingLong(
                motor -> -tests.stream().filter(t -> t.motor().equals(motor)).count());
        ForkJoinTask.invokeAll(
                each.keySet().stream().sorted(most).map(each::get).toList());
        return each.values().stream().map(ForkJoinTask::join).toList();
    }

    /** Alignments of the axes of a motor: they count its pole pairs. */
    private static List<TestResult> aligned(Motor motor, List<AxisIdentification> axes) {
        return axes.stream()
                .filter(a -> a.motor().equals(motor.name()))
                .flatMap(a -> a.results().stream())
                .toList();
    }

    /** One motor and the tests it was in; motors do not depend on each other. */
    private record Done(IdentifiedMotor motor, List<TestResult> results) {
        static Done of(
                Motor motor, List<BenchTest> tests, Map<String, Recording> recordings, List<TestResult> aligned) {
            List<BenchTest> own =
                    tests.stream().filter(t -> t.motor().equals(motor.name())).toList();
            MotorIdentification identification = new MotorIdentification(motor, own, recordings, aligned);
            return new Done(identification.identified(), List.copyOf(identification.results()));
        }
    }
}
