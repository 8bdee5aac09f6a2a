package servowright.engine.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ForkJoinTask;
import java.util.function.BiFunction;
import java.util.stream.Stream;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Propagation;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.recording.Recording;

/** Everything that declarations and tests say about one motor. */
final class MotorIdentification {
    private final Motor motor;
    private final List<BenchTest> tests;
    private final Map<String, Recording> recordings;
    private final Map<String, TestResult> results = new LinkedHashMap<>();
    private final Map<MotorParameter, Parameter> parameters = new LinkedHashMap<>();
    private final List<Phrase> remarks = new ArrayList<>();
    private final List<LoopInductance> loops = new ArrayList<>();
    private final Contradictions contradictions;

    /** With the results of tests of its axes that say something of the motor too. */
    MotorIdentification(
            Motor motor, List<BenchTest> tests, Map<String, Recording> recordings, List<TestResult> ofAxes) {
        this.motor = motor;
        this.tests = tests;
        this.recordings = recordings;
        this.contradictions = new Contradictions(motor.name());
        ofAxes.forEach(r -> results.put(r.test().id(), r));
    }

    /** What each test gave. */
    List<TestResult> results() {
        return List.copyOf(results.values());
    }

    IdentifiedMotor identified() {
        List<Candidate> declaredPolePairs = PolePairCandidates.of(motor, remarks);
        spins(declaredPolePairs.stream().findFirst().map(Candidate::value));
        Optional<Candidate> polePairs = polePairs(declaredPolePairs);
        Optional<Known> pairs = polePairs.map(Candidate::value);
        reduce(TestKind.TORQUE_STAIRS, MotorParameter.FLUX_LINKAGE, (t, r) -> TorqueStairsTest.of(t, motor, r, pairs));
        reduce(TestKind.LOAD_CURVE, MotorParameter.FLUX_LINKAGE, (t, r) -> LoadCurveTest.of(t, motor, r, pairs));
        reduce(TestKind.AXIS_LOG, MotorParameter.PHASE_RESISTANCE, (t, r) -> AxisLogTest.of(t, motor, r, pairs));
        of(TestKind.ACCELERATION).stream()
                .filter(AccelerationTest::givesTorqueConstant) // the others build on it
                .map(t -> reduced(
                        t,
                        MotorParameter.FLUX_LINKAGE,
                        (test, r) -> AccelerationTest.of(test, motor, r, pairs, Optional.empty())))
                .forEach(this::keep);
        flux(polePairs);
        resistance();
        ShortCircuitTest.Given given = new ShortCircuitTest.Given(
                pairs, best(MotorParameter.FLUX_LINKAGE), best(MotorParameter.PHASE_RESISTANCE));
        reduce(TestKind.SHORT_CIRCUIT, MotorParameter.D_INDUCTANCE, (t, r) -> ShortCircuitTest.of(t, r, given));
        inductances();
        Optional<Known> torqueConstant = torqueConstant(pairs);
        onTheConstants(pairs, torqueConstant);
        drag();
        besideTheMotor();
        if (!of(TestKind.HEATING).isEmpty()) {
            plain(MotorParameter.THERMAL_RESISTANCE, MotorFigure.THERMAL_RESISTANCE);
        }
        ifRead(MotorParameter.WINDING_TO_HOUSING);
        ifRead(MotorParameter.HOUSING_TO_AIR);
        ifRead(MotorParameter.WINDING_CAPACITY);
        ifRead(MotorParameter.HOUSING_CAPACITY);
        plain(MotorParameter.ROTOR_INERTIA, MotorFigure.ROTOR_INERTIA);
        return new IdentifiedMotor(motor.name(), inOrder(), contradictions.found(), remarks);
    }

    private Map<MotorParameter, Parameter> inOrder() {
        Map<MotorParameter, Parameter> ordered = new LinkedHashMap<>();
        for (MotorParameter what : MotorParameter.values()) {
            Parameter found = parameters.get(what);
            if (found != null) {
                ordered.put(what, found);
            }
        }
        return ordered;
    }

    /** The longest part of the work, and no spin depends on another. */
    private void spins(Optional<Known> polePairs) {
        List<Spun> spins = of(TestKind.SPIN).parallelStream()
                .map(test -> spin(test, polePairs))
                .toList();
        spins.forEach(spun -> keep(spun.result()));
        remarks.addAll(
                SpinLine.check(spins.stream().flatMap(s -> s.points().stream()).toList()));
    }

    private Spun spin(BenchTest test, Optional<Known> polePairs) {
        Optional<Recording> recording = recording(test);
        if (test.recording().isPresent() && recording.isEmpty()) {
            return new Spun(absent(test, MotorParameter.FLUX_LINKAGE), List.of());
        }
        return recording.map(r -> SpinTest.of(test, motor, r)).orElseGet(() -> SpinReadings.of(test, motor, polePairs));
    }

    private Optional<Candidate> polePairs(List<Candidate> declared) {
        Choice.Chosen chosen = choose(MotorParameter.POLE_PAIRS, declared);
        Optional<Candidate> best = Choice.best(chosen);
        best.ifPresent(b -> {
            declared.forEach(other -> contradictions.polePairs(other, b));
            chosen.apart().forEach(pair -> contradictions.tests(MotorParameter.POLE_PAIRS, pair, 1));
            int p = (int) Math.round(b.value().si());
            PolePairCandidates.against(motor, p, remarks).ifPresent(other -> contradictions.polePairs(other, b));
        });
        return best;
    }

    private void flux(Optional<Candidate> polePairs) {
        List<Candidate> measured = measured(MotorParameter.FLUX_LINKAGE);
        List<LabelFlux> labels = polePairs
                .map(p -> LabelFlux.of(motor, p.value(), measured.stream().findFirst()))
                .orElse(List.of());
        List<Candidate> declared = labels.stream().map(LabelFlux::candidate).toList();
        Choice.Chosen chosen = choose(MotorParameter.FLUX_LINKAGE, declared);
        int p = polePairs.map(c -> (int) Math.round(c.value().si())).orElse(1);
        chosen.apart().forEach(pair -> contradictions.tests(MotorParameter.FLUX_LINKAGE, pair, p));
        Choice.best(chosen)
                .ifPresent(best -> labels.stream()
                        .filter(l -> !l.candidate().equals(best))
                        .forEach(l -> contradictions.flux(l, best, p)));
        if (polePairs.isEmpty() && measured.isEmpty()) {
            remarks.add(Phrase.of("pole pairs of " + motor.name()
                    + " are not known: constants per speed give no flux linkage without them"));
        }
    }

    private void resistance() {
        for (BenchTest test : of(TestKind.RESISTANCE)) {
            results.put(test.id(), ResistanceTest.of(test));
        }
        winding(MotorParameter.PHASE_RESISTANCE, LabelFigure.resistances(motor));
    }

    private void inductances() {
        Optional<Known> ohm = best(MotorParameter.PHASE_RESISTANCE);
        for (BenchTest test : of(TestKind.INDUCTANCE_STEP)) {
            Optional<Recording> recording = recording(test);
            if (test.recording().isPresent() && recording.isEmpty()) {
                results.put(test.id(), absent(test, MotorParameter.PHASE_INDUCTANCE));
            } else {
                Stepped stepped = recording
                        .map(r -> InductanceStepTest.of(test, motor, r, ohm))
                        .orElseGet(() -> InductanceReadings.of(test, best(MotorParameter.POLE_PAIRS)));
                results.put(test.id(), stepped.result());
                loops.addAll(stepped.loops());
            }
        }
        Optional<PhaseInductance.Pair> axes =
                PhaseInductance.possible(loops) ? PhaseInductance.threePairs(loops) : Optional.empty();
        winding(MotorParameter.PHASE_INDUCTANCE, LabelFigure.inductances(motor));
        Optional<Candidate> phase = Optional.ofNullable(parameters.get(MotorParameter.PHASE_INDUCTANCE))
                .flatMap(p -> p.candidates().stream().findFirst());
        axis(MotorParameter.D_INDUCTANCE, MotorFigure.D_INDUCTANCE, axes.map(PhaseInductance.Pair::d), phase);
        axis(MotorParameter.Q_INDUCTANCE, MotorFigure.Q_INDUCTANCE, axes.map(PhaseInductance.Pair::q), phase);
    }

    /** Tests that build on the constants and not on each other, side by side. */
    private void onTheConstants(Optional<Known> pairs, Optional<Known> torqueConstant) {
        ForkJoinTask<List<TestResult>> coasting =
                ForkJoinTask.adapt(this::coastDowns).fork();
        List<TestResult> others = tests.parallelStream()
                .flatMap(t -> onTheConstants(t, pairs, torqueConstant).stream())
                .toList();
        others.forEach(this::keep);
        coasting.join().forEach(this::keep);
    }

    private Optional<TestResult> onTheConstants(BenchTest test, Optional<Known> pairs, Optional<Known> torqueConstant) {
        return switch (test.kind()) {
            case NO_LOAD ->
                Optional.of(reduced(test, MotorParameter.DRY_DRAG, (t, r) -> NoLoadTest.of(t, r, torqueConstant)));
            case ACCELERATION ->
                AccelerationTest.givesTorqueConstant(test)
                        ? Optional.empty()
                        : Optional.of(reduced(
                                test,
                                MotorParameter.ROTOR_INERTIA,
                                (t, r) -> AccelerationTest.of(t, motor, r, pairs, torqueConstant)));
            case COGGING_RUN, HOLD_MAP ->
                Optional.of(reduced(
                        test,
                        MotorParameter.COGGING_TORQUE,
                        (t, r) -> CoggingTest.of(t, motor, r, pairs, torqueConstant)));
            case CURRENT_ZERO, CURRENT_SENSING ->
                Optional.of(reduced(test, SensingParameter.OFFSET_A, (t, r) -> CurrentSensingTest.of(t, r, pairs)));
            case HEATING ->
                Optional.of(reduced(test, MotorParameter.THERMAL_RESISTANCE, (t, r) -> HeatingTest.of(t, motor, r)));
            default -> Optional.empty();
        };
    }

    private List<TestResult> coastDowns() {
        List<BenchTest> all = of(TestKind.COAST_DOWN);
        Stream<TestResult> lacking =
                all.stream().filter(t -> recording(t).isEmpty()).map(t -> absent(t, MotorParameter.DRY_DRAG));
        List<CoastDownTest> readable = all.parallelStream()
                .flatMap(t -> recording(t).map(r -> CoastDownTest.of(t, r)).stream())
                .toList();
        Optional<Known> declared =
                LabelFigure.plain(motor, MotorFigure.ROTOR_INERTIA, MotorParameter.ROTOR_INERTIA.unit()).stream()
                        .findFirst()
                        .map(l -> l.candidate().value());
        return Stream.concat(lacking, CoastDowns.of(readable, declared).stream())
                .toList();
    }

    /** Tests of what stands around a motor: its loops, its recorders, its thermistor. */
    private void besideTheMotor() {
        reduce(TestKind.RESPONSE_RUN, ResponseParameter.GAIN, ResponseRunTest::of);
        sines();
        reduce(TestKind.THERMISTOR_CHECK, ThermistorParameter.BETA, (t, r) -> ThermistorTest.of(t, motor, r));
        SharedEventTest.of(of(TestKind.SHARED_EVENT), this::recording).forEach(this::keep);
    }

    private void sines() {
        List<SineResponseTest> readable = new ArrayList<>();
        for (BenchTest test : of(TestKind.SINE_RESPONSE)) {
            Optional<Recording> recording = recording(test);
            if (test.recording().isPresent() && recording.isEmpty()) {
                keep(absent(test, ResponseParameter.RATIO));
            } else {
                readable.add(SineResponseTest.of(test, recording));
            }
        }
        SineResponses.of(readable).forEach(this::keep);
    }

    /** Asked for only when a test was made that could tell: no prediction needs it otherwise. */
    private void drag() {
        if (read(MotorParameter.DRY_DRAG)) {
            winding(MotorParameter.DRY_DRAG, List.of());
            winding(MotorParameter.VISCOUS_DRAG, List.of());
        }
        ifRead(MotorParameter.COGGING_TORQUE);
    }

    private void ifRead(MotorParameter what) {
        if (read(what)) {
            winding(what, List.of());
        }
    }

    private boolean read(MotorParameter what) {
        return results.values().stream().anyMatch(r -> r.values().containsKey(what));
    }

    private Optional<Known> best(MotorParameter what) {
        return Optional.ofNullable(parameters.get(what)).flatMap(p -> p.best().found());
    }

    /** Torque per q-axis ampere, from the best flux linkage. */
    private Optional<Known> torqueConstant(Optional<Known> pairs) {
        return best(MotorParameter.FLUX_LINKAGE)
                .flatMap(flux -> pairs.map(p -> Propagation.derive(
                        Dimension.TORQUE_CONSTANT,
                        v -> MotorConstants.ofFluxLinkage(v[0], (int) Math.round(p.si()))
                                .torqueConstant(CurrentBasis.Q_AXIS),
                        List.of(flux))));
    }

    /** Reduces every test of a kind, from its recording or its readings. */
    private void reduce(TestKind kind, Sought what, BiFunction<BenchTest, Optional<Recording>, TestResult> test) {
        of(kind).forEach(one -> keep(reduced(one, what, test)));
    }

    private TestResult reduced(
            BenchTest one, Sought what, BiFunction<BenchTest, Optional<Recording>, TestResult> test) {
        Optional<Recording> recording = recording(one);
        boolean lacking = one.recording().isPresent() && recording.isEmpty();
        return lacking ? absent(one, what) : test.apply(one, recording);
    }

    private void keep(TestResult result) {
        results.put(result.test().id(), result);
    }

    private void axis(
            MotorParameter what, MotorFigure figure, Optional<Candidate> fromPairs, Optional<Candidate> phase) {
        List<LabelFigure> labels = LabelFigure.plain(motor, figure, what.unit());
        List<Candidate> declared =
                new ArrayList<>(labels.stream().map(LabelFigure::candidate).toList());
        phase.map(p -> PhaseInductance.between(motor.name(), p)).ifPresent(declared::add);
        List<Candidate> measured = new ArrayList<>(measured(what));
        if (measured.isEmpty()) {
            fromPairs.ifPresent(measured::add);
        }
        keep(what, labels, Choice.of(motor.name(), what, measured, declared, needs(what)));
    }

    private void winding(MotorParameter what, List<LabelFigure> labels) {
        List<Candidate> declared = labels.stream().map(LabelFigure::candidate).toList();
        keep(what, labels, choose(what, declared));
    }

    private void plain(MotorParameter what, MotorFigure figure) {
        winding(what, LabelFigure.plain(motor, figure, what.unit()));
    }

    private void keep(MotorParameter what, List<LabelFigure> labels, Choice.Chosen chosen) {
        parameters.put(what, chosen.parameter());
        // Tests at different rotor positions of a salient motor differ, and rightly so.
        if (what != MotorParameter.PHASE_INDUCTANCE) {
            chosen.apart().forEach(pair -> contradictions.tests(what, pair, 1));
        }
        Choice.best(chosen)
                .ifPresent(best -> labels.stream()
                        .filter(l -> !l.candidate().equals(best))
                        .forEach(l -> contradictions.winding(what, l, best)));
    }

    private Choice.Chosen choose(MotorParameter what, List<Candidate> declared) {
        Choice.Chosen chosen = Choice.of(motor.name(), what, measured(what), declared, needs(what));
        parameters.put(what, chosen.parameter());
        return chosen;
    }

    private List<Candidate> measured(MotorParameter what) {
        List<Candidate> found = new ArrayList<>();
        for (TestResult result : results.values()) {
            Outcome<Candidate> outcome = result.values().get(what);
            if (outcome != null) {
                outcome.found().ifPresent(found::add);
            }
        }
        return found;
    }

    /** What the tests lacked, then what the parameter asks for in general. */
    private List<Need> needs(MotorParameter what) {
        List<Need> needs = new ArrayList<>();
        for (TestResult result : results.values()) {
            if (result.values().get(what) instanceof Missing<Candidate> missing) {
                needs.addAll(missing.needs());
            }
        }
        needs.add(new Need(what.words() + " of " + motor.name(), what.settle()));
        return needs;
    }

    private Optional<Recording> recording(BenchTest test) {
        return test.recording().map(recordings::get);
    }

    private List<BenchTest> of(TestKind kind) {
        return tests.stream().filter(t -> t.kind() == kind).toList();
    }

    private static TestResult absent(BenchTest test, Sought what) {
        String name = test.recording().orElse("");
        return new ResultSheet(test)
                .refused(what, "the recording " + name + " of " + test.id(), "put the file there, or correct its name");
    }
}
