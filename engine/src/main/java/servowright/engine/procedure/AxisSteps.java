package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.procedure.Step.Settles;
import servowright.engine.procedure.Step.State;

/** The steps of the angle sensor of one axis: by hand first, at standstill next, turning last. */
final class AxisSteps {
    private static final List<AxisTask> ORDER = List.of(
            new HandTurnTask(),
            new ChannelTurnTask(),
            new ShimSeriesTask(),
            new AlignmentTask(),
            new SlowDragTask(),
            new ReseatingTask(),
            new FreeRunTask(),
            new ReferenceRunTask(),
            new OffsetAtSpeedsTask());

    private AxisSteps() {}

    static List<Step> of(IdentifiedMachine machine, AxisPrediction axis) {
        AxisBench bench = new AxisBench(axis, List.of());
        if (bench.sensor() == SensorKind.NONE) {
            return List.of();
        }
        return ORDER.stream()
                .filter(task -> task.suits(bench))
                .map(task -> step(task, machine, axis))
                .toList();
    }

    private static Step step(AxisTask task, IdentifiedMachine machine, AxisPrediction axis) {
        List<TestResult> made = machine.tests().stream()
                .filter(t -> t.test().axis().filter(axis.name()::equals).isPresent())
                .filter(t -> t.test().kind() == task.kind())
                .toList();
        AxisBench bench = new AxisBench(axis, made);
        List<Expectation> all = task.expectations(bench);
        List<Expectation> read = all.stream().filter(e -> e.read().isPresent()).toList();
        return new Step(
                0,
                task.kind(),
                axis.name(),
                state(task, bench, read),
                task.hookUp(bench),
                cautions(task, bench),
                read.isEmpty() ? all : read,
                task.settles().stream().map(w -> new Settles(w, bench.now(w))).toList(),
                List.of(),
                made.stream().map(t -> t.test().id()).toList());
    }

    private static State state(AxisTask task, AxisBench bench, List<Expectation> read) {
        if (bench.made().isEmpty()) {
            boolean known = task.settles().stream().allMatch(w -> bench.now(w).isPresent());
            return task.needed(bench) && !known ? State.WORTH : State.SPARE;
        }
        if (read.stream().anyMatch(Expectation::outside)) {
            return State.DIFFERS;
        }
        boolean gave = bench.made().stream()
                .anyMatch(t -> task.settles().stream()
                        .anyMatch(w -> t.values().containsKey(w)
                                && t.outcome(w).found().isPresent()));
        return gave ? State.AGREES : State.REFUSED;
    }

    /** A load that falls when its drive lets go is supported before anybody works on it. */
    private static List<Phrase> cautions(AxisTask task, AxisBench bench) {
        List<Phrase> all = new ArrayList<>();
        double weight = bench.own(AxisFigure.LOAD_TORQUE).map(Known::si).orElse(0.0);
        double friction = bench.own(AxisFigure.LOAD_FRICTION).map(Known::si).orElse(0.0);
        if (Math.abs(weight) > friction) {
            all.add(Phrase.of("The load falls when its drive lets go: take it off or support it."));
        }
        all.addAll(task.cautions(bench));
        return all;
    }
}
