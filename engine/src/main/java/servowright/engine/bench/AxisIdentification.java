package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Axis;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Machine;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.recording.Recording;

/** Everything that tests say about the angle sensor of one axis. */
final class AxisIdentification {
    private static final int MOST_BITS = 30;

    private final Axis axis;
    private final List<BenchTest> tests;
    private final Map<String, Recording> recordings;
    private final OptionalInt countsPerTurn;
    private final Map<String, Sensed> sensed = new LinkedHashMap<>();
    private final List<Phrase> remarks = new ArrayList<>();

    /** Reduces the alignments, which need nothing and give the pole pairs. */
    AxisIdentification(Machine machine, Axis axis, List<BenchTest> tests, Map<String, Recording> recordings) {
        this.axis = axis;
        this.tests = tests.stream()
                .filter(t -> t.kind().ofAxis() && t.axis().equals(Optional.of(axis.name())))
                .toList();
        this.recordings = recordings;
        this.countsPerTurn = axis.sensor()
                .map(name -> machine.sensors().get(name))
                .flatMap(s -> s.figures().known(SensorFigure.RESOLUTION))
                .map(bits -> (int) Math.round(bits.si()))
                .filter(bits -> bits > 0 && bits <= MOST_BITS)
                .map(bits -> OptionalInt.of(1 << bits))
                .orElse(OptionalInt.empty());
        this.tests.stream()
                .filter(t -> t.kind() == TestKind.ALIGNMENT)
                .forEach(t -> sensed.put(t.id(), AlignmentTest.of(t)));
    }

    String motor() {
        return axis.motor().orElse("");
    }

    /** What the tests gave that were reduced until now. */
    List<TestResult> results() {
        return sensed.values().stream().map(Sensed::result).toList();
    }

    /** Reduces the other tests. */
    IdentifiedAxis identified(Optional<Known> polePairs) {
        List<Sensed> others = tests.parallelStream()
                .filter(t -> t.kind() != TestKind.ALIGNMENT)
                .map(t -> reduced(t, polePairs))
                .toList();
        others.forEach(s -> sensed.put(s.result().test().id(), s));
        List<AngleEvidence> evidence = tests.stream()
                .map(t -> sensed.get(t.id()))
                .flatMap(s -> s.evidence().stream())
                .toList();
        Map<AxisParameter, List<Candidate>> found = new EnumMap<>(AxisParameter.class);
        for (AxisParameter what : AxisParameter.values()) {
            List<Candidate> all = results().stream()
                    .flatMap(r -> Optional.ofNullable(r.values().get(what)).stream())
                    .flatMap(o -> o.found().stream())
                    .sorted(Comparator.comparingDouble(c -> c.value().standardUncertainty()))
                    .toList();
            if (!all.isEmpty()) {
                found.put(what, all);
            }
        }
        List<AngleRuns.Run> runs = runs();
        remarks.addAll(AngleRuns.delayAndPlay(runs));
        remarks.addAll(AngleRuns.rippleApart(runs));
        return new IdentifiedAxis(axis.name(), found, evidence, remarks);
    }

    private List<AngleRuns.Run> runs() {
        return sensed.values().stream()
                .flatMap(s -> AngleRuns.Run.of(s).stream())
                .toList();
    }

    private Sensed reduced(BenchTest test, Optional<Known> polePairs) {
        SensorReadings readings = new SensorReadings(test);
        return switch (test.kind()) {
            case HAND_TURN -> recorded(test, AxisParameter.TURNS_READ, r -> HandTurnTest.of(test, r, countsPerTurn));
            case SLOW_DRAG ->
                recorded(
                        test,
                        AxisParameter.COMMUTATION_OFFSET,
                        r -> fit(test, r).drag(polePairs));
            case FREE_RUN ->
                recorded(test, AxisParameter.ANGLE_ERROR, r -> fit(test, r).freeRun());
            case REFERENCE_RUN ->
                recorded(test, AxisParameter.ANGLE_ERROR, r -> fit(test, r).reference());
            case CHANNEL_TURN -> recorded(test, AxisParameter.CHANNEL_OFFSET, r -> ChannelTurnTest.of(test, r));
            case OFFSET_AT_SPEEDS -> readings.offsets(polePairs);
            case SHIM_SERIES -> readings.shims();
            default -> readings.seatings();
        };
    }

    private AngleErrorTest fit(BenchTest test, Recording recording) {
        return new AngleErrorTest(test, recording, countsPerTurn);
    }

    private Sensed recorded(BenchTest test, AxisParameter what, Function<Recording, Sensed> reduction) {
        return test.recording()
                .map(recordings::get)
                .map(reduction)
                .orElseGet(() -> Sensed.without(new ResultSheet(test)
                        .refused(
                                what,
                                test.recording()
                                        .map(name -> "the recording " + name + " of " + test.id())
                                        .orElse("a recording of " + test.id()),
                                "put the file there, and name it under recording")));
    }
}
