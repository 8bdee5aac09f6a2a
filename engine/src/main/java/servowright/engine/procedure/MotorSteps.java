package servowright.engine.procedure;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.ResponseParameter;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.Motor;
import servowright.engine.machine.TestKind;
import servowright.engine.procedure.Step.Settles;
import servowright.engine.procedure.Step.State;

/** The steps of one motor: cold and without supply first, by a drill next, under power then, hot last. */
final class MotorSteps {
    private static final List<MotorTask> ORDER = List.of(
            new ResistanceTask(),
            new InductanceTask(),
            new ThermistorTask(),
            new SpinTask(),
            new ShortCircuitTask(),
            new CurrentZeroTask(),
            new NoLoadTask(),
            new CoastDownTask(),
            new AccelerationTask(),
            new AxisLogTask(),
            new ResponseRunTask(),
            new SineResponseTask(),
            new CurrentSensingTask(),
            new HoldMapTask(),
            new TorqueStairsTask(),
            new LoadCurveTask(),
            new SharedEventTask(),
            new HeatingTask());

    private final IdentifiedMachine machine;
    private final IdentifiedMotor identified;
    private final MotorBench bench;
    private final List<Stake> stakes;

    private MotorSteps(IdentifiedMachine machine, Motor motor, IdentifiedMotor identified, List<Stake> stakes) {
        this.machine = machine;
        this.identified = identified;
        this.bench = MotorBench.of(machine, motor, identified);
        this.stakes = stakes;
    }

    static List<Step> of(IdentifiedMachine machine, Motor motor, List<Stake> stakes) {
        return machine.motor(motor.name())
                .map(found -> new MotorSteps(machine, motor, found, stakes))
                .map(steps -> ORDER.stream()
                        .flatMap(task -> steps.step(task).stream())
                        .toList())
                .orElse(List.of());
    }

    private Optional<Step> step(MotorTask task) {
        List<TestResult> made = machine.tests().stream()
                .filter(t -> t.test().axis().isEmpty() && t.test().motor().equals(identified.name()))
                .filter(t -> task.kinds().contains(t.test().kind()))
                .toList();
        return made.isEmpty() && !task.suits(bench) ? Optional.empty() : Optional.of(step(task, made));
    }

    private Step step(MotorTask task, List<TestResult> made) {
        Set<String> ids = new LinkedHashSet<>();
        made.forEach(t -> ids.add(t.test().id()));
        Beforehand before = new Beforehand(bench.motor(), identified, ids);
        List<Expectation> read = made.stream()
                .flatMap(t -> readings(task, t, made, before).stream())
                .toList();
        List<Expectation> all = read.isEmpty() ? planned(task, made, before) : read;
        List<Stake> own = stakes.stream()
                .filter(s ->
                        s.motor().equals(identified.name()) && task.settles().contains(s.what()))
                .toList();
        return new Step(
                0,
                task.kind(),
                identified.name(),
                state(task, made, read, own),
                task.hookUp(bench),
                task.cautions(bench),
                all,
                task.settles().stream().map(w -> settles(w, made)).toList(),
                own,
                List.copyOf(ids));
    }

    private List<Expectation> readings(MotorTask task, TestResult result, List<TestResult> made, Beforehand before) {
        Function<Sought, Optional<Known>> otherwise = what -> made.stream()
                .map(t -> Told.found(t, what))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Known::standardUncertainty))
                .or(() -> now(what));
        Stream<Expectation> asked =
                task.questions(bench.during(result.test())).stream().map(q -> q.asked(result, before, otherwise));
        return Stream.concat(asked, task.bounded(made, Optional.of(result)).stream())
                .filter(e -> e.read().isPresent())
                .toList();
    }

    private List<Expectation> planned(MotorTask task, List<TestResult> made, Beforehand before) {
        return Stream.concat(
                        task.questions(bench).stream().map(q -> q.planned(before)),
                        task.bounded(made, Optional.empty()).stream())
                .toList();
    }

    private Optional<Known> now(Sought what) {
        if (what instanceof MotorParameter parameter) {
            return identified.best(parameter).found();
        }
        return best(
                machine.tests().stream()
                        .filter(t -> t.test().motor().equals(identified.name()))
                        .toList(),
                what);
    }

    /** What was measured before what was defined or assumed, the least uncertain first. */
    private static Optional<Known> best(List<TestResult> tests, Sought what) {
        return tests.stream()
                .map(t -> Told.found(t, what))
                .flatMap(Optional::stream)
                .min(Comparator.comparing((Known k) -> k.origin() != Origin.MEASURED)
                        .thenComparingDouble(Known::standardUncertainty));
    }

    /** A response belongs to what lies between its input and its output: another test may have looked at something else. */
    private Settles settles(Sought what, List<TestResult> made) {
        return new Settles(what, what instanceof ResponseParameter ? best(made, what) : now(what));
    }

    private State state(MotorTask task, List<TestResult> made, List<Expectation> read, List<Stake> own) {
        if (!made.isEmpty()) {
            boolean gave = made.stream()
                    .anyMatch(t -> task.settles().stream()
                            .anyMatch(w -> Told.found(t, w).isPresent()));
            if (read.stream().anyMatch(Expectation::outside)) {
                return State.DIFFERS;
            }
            return gave ? State.AGREES : State.REFUSED;
        }
        return worth(task, own) ? State.WORTH : State.SPARE;
    }

    private boolean worth(MotorTask task, List<Stake> own) {
        boolean open = task.settles().stream().anyMatch(this::open);
        if (task.spare()) {
            boolean weighs = own.stream().anyMatch(s -> s.matters() && open(s.what()) && !plainStepLeft(s.what()));
            return weighs || (task.kind() == TestKind.TORQUE_STAIRS && atOdds());
        }
        return open;
    }

    /** Whether a step that is not spare could still tell it. */
    private boolean plainStepLeft(Sought what) {
        return ORDER.stream()
                .filter(t -> !t.spare() && t.settles().contains(what))
                .anyMatch(t -> machine.tests().stream()
                        .noneMatch(m -> m.test().motor().equals(identified.name())
                                && t.kinds().contains(m.test().kind())));
    }

    /** Not read on a bench yet. */
    private boolean open(Sought what) {
        return now(what).filter(k -> k.origin() == Origin.MEASURED).isEmpty();
    }

    /** A lever decides between two torque constants, whatever a label calls them. */
    private boolean atOdds() {
        return identified.contradictions().stream().anyMatch(c -> c.parameter() == MotorParameter.FLUX_LINKAGE);
    }
}
