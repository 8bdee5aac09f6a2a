package servowright.engine.procedure;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.IdentifiedMachine;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
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
            new SpinTask(),
            new ShortCircuitTask(),
            new CurrentZeroTask(),
            new NoLoadTask(),
            new CoastDownTask(),
            new AccelerationTask(),
            new AxisLogTask(),
            new CurrentSensingTask(),
            new HoldMapTask(),
            new TorqueStairsTask(),
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
                .map(steps -> ORDER.stream().map(steps::step).toList())
                .orElse(List.of());
    }

    private Step step(MotorTask task) {
        List<TestResult> made = machine.tests().stream()
                .filter(t -> t.test().axis().isEmpty() && t.test().motor().equals(identified.name()))
                .filter(t -> sameTask(t.test().kind(), task.kind()))
                .toList();
        Set<String> ids = new LinkedHashSet<>();
        made.forEach(t -> ids.add(t.test().id()));
        Beforehand before = new Beforehand(bench.motor(), identified, ids);
        List<Expectation> read = made.stream()
                .flatMap(t -> readings(task, t, made, before).stream())
                .toList();
        List<Expectation> all = read.isEmpty() ? planned(task, before) : read;
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
                task.settles().stream().map(this::settles).toList(),
                own,
                List.copyOf(ids));
    }

    /** Cogging is run through or held through: one step of the plan. */
    private static boolean sameTask(TestKind made, TestKind planned) {
        return made == planned || (made == TestKind.COGGING_RUN && planned == TestKind.HOLD_MAP);
    }

    private List<Expectation> readings(MotorTask task, TestResult result, List<TestResult> made, Beforehand before) {
        Function<Sought, Optional<Known>> otherwise = what -> made.stream()
                .map(t -> given(t, what))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Known::standardUncertainty))
                .or(() -> now(what));
        return task.questions(bench.during(result.test())).stream()
                .map(q -> q.asked(result.test().id(), before, what -> given(result, what), otherwise))
                .filter(e -> e.read().isPresent())
                .toList();
    }

    private List<Expectation> planned(MotorTask task, Beforehand before) {
        return task.questions(bench).stream()
                .map(q -> q.asked("", before, what -> Optional.empty(), what -> Optional.empty()))
                .toList();
    }

    private static Optional<Known> given(TestResult result, Sought what) {
        return result.values().containsKey(what)
                ? result.outcome(what).found().map(Candidate::value)
                : Optional.empty();
    }

    private Optional<Known> now(Sought what) {
        if (what instanceof MotorParameter parameter) {
            return identified.best(parameter).found();
        }
        return machine.tests().stream()
                .filter(t -> t.test().motor().equals(identified.name()))
                .map(t -> given(t, what))
                .flatMap(Optional::stream)
                .min(Comparator.comparingDouble(Known::standardUncertainty));
    }

    private Settles settles(Sought what) {
        return new Settles(what, now(what));
    }

    private State state(MotorTask task, List<TestResult> made, List<Expectation> read, List<Stake> own) {
        if (!made.isEmpty()) {
            boolean gave = made.stream()
                    .anyMatch(t ->
                            task.settles().stream().anyMatch(w -> given(t, w).isPresent()));
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
                                && sameTask(m.test().kind(), t.kind())));
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
