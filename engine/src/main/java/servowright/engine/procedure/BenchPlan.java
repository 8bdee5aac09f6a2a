package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.machine.Axis;
import servowright.engine.prediction.Predictions;

/**
 * What to measure on a machine, in a safe order: motors first, on the bench and cold before warm, then the axes.
 *
 * @param chapters one for each motor and each axis that has steps
 */
public record BenchPlan(List<Chapter> chapters) {
    /**
     * The steps of one part.
     *
     * @param name  of the motor or axis
     * @param motor whether it is a motor
     * @param parts of a motor the axes it drives; of an axis its motor, drive and sensor
     */
    public record Chapter(String name, boolean motor, List<String> parts, List<Step> steps) {
        public Chapter {
            parts = List.copyOf(parts);
            steps = List.copyOf(steps);
        }
    }

    public BenchPlan {
        chapters = List.copyOf(chapters);
    }

    /** The plan of a machine; {@code stakes} say what hangs on which parameter. */
    public static BenchPlan of(IdentifiedMachine identified, Predictions predictions, List<Stake> stakes) {
        List<Chapter> chapters = new ArrayList<>();
        identified.machine().motors().values().forEach(motor -> {
            List<String> axes = identified.machine().axes().values().stream()
                    .filter(a -> a.motor().filter(motor.name()::equals).isPresent())
                    .map(Axis::name)
                    .toList();
            chapters.add(new Chapter(motor.name(), true, axes, MotorSteps.of(identified, motor, stakes)));
        });
        predictions.axes().forEach(axis -> {
            List<String> parts = Stream.of(
                            axis.parts().axis().motor(),
                            axis.parts().axis().drive(),
                            axis.parts().axis().sensor())
                    .flatMap(Optional::stream)
                    .toList();
            chapters.add(new Chapter(axis.name(), false, parts, AxisSteps.of(identified, axis)));
        });
        return new BenchPlan(numbered(chapters));
    }

    private static List<Chapter> numbered(List<Chapter> chapters) {
        List<Chapter> all = new ArrayList<>();
        int next = 1;
        for (Chapter chapter : chapters) {
            List<Step> steps = new ArrayList<>();
            for (Step step : chapter.steps()) {
                steps.add(step.numbered(next++));
            }
            if (!steps.isEmpty()) {
                all.add(new Chapter(chapter.name(), chapter.motor(), chapter.parts(), steps));
            }
        }
        return all;
    }

    /** Every step, in order. */
    public List<Step> steps() {
        return chapters.stream().flatMap(c -> c.steps().stream()).toList();
    }

    /** Steps worth doing whose outcome could change a verdict, the heaviest first. */
    public List<Step> first() {
        return steps().stream()
                .filter(s -> s.state() == Step.State.WORTH || s.state() == Step.State.REFUSED)
                .filter(s -> s.stakes().stream().anyMatch(Stake::matters))
                .sorted(Comparator.comparingDouble((Step s) -> -s.weight()).thenComparingInt(Step::number))
                .toList();
    }
}
