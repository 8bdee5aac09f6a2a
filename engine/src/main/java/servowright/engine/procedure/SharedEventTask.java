package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.RecorderParameter;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** One knock that several recorders see. */
final class SharedEventTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.SHARED_EVENT;
    }

    @Override
    public List<Sought> settles() {
        return List.of(RecorderParameter.CLOCK_OFFSET);
    }

    /** Only where recorders are named: one alone has nobody to agree with. */
    @Override
    public boolean suits(MotorBench bench) {
        return false;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                        "Both recorders running, each with a channel that shows the same at once: speed beside phase current,"
                                + " or a microphone beside the drive's current. One knock on the shaft, or one step of the drive, a second"
                                + " or more after both began; it must not repeat itself."),
                Phrase.of(
                        "The offset is told to a small part of a sample of the slower one; do it anew after every start of a"
                                + " recorder."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(FIRST_TURN);
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        return List.of();
    }

    /** The first recorder gives the clock that the others are held against, and has no offset of its own. */
    @Override
    public List<Expectation> bounded(List<TestResult> made, Optional<TestResult> one) {
        Outcome<Window> window = one.flatMap(SharedEventTask::shifts)
                .orElseGet(() -> Outcome.missing("second recording of the same event", "state another shared event"));
        return List.of(Expectation.held(
                "offset of the clock",
                Phrase.of("against the first recorder, both counted from their first sample"),
                "ms",
                one,
                window,
                one.filter(t -> window.found().isPresent())
                        .flatMap(t -> Told.value(RecorderParameter.CLOCK_OFFSET, Dimension.TIME)
                                .in(t))));
    }

    /** Both recordings hold the event: the clocks are no farther apart than lets them overlap. */
    private static Optional<Outcome<Window>> shifts(TestResult test) {
        Optional<Quantity> from = Told.figure("from").in(test);
        Optional<Quantity> to = Told.figure("to").in(test);
        return from.flatMap(low -> to.map(high -> AxisBench.between(
                low.si(), (low.si() + high.si()) / 2, high.si(), Dimension.TIME, "both recordings hold the event")));
    }
}
