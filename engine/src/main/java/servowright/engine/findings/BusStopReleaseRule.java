package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.StoppedQueue;
import servowright.engine.prediction.Predictions;

/** Commands that pile up in the host while a stop keeps the drives without power, and are sent when it is released. */
final class BusStopReleaseRule implements BusRule {
    @Override
    public String id() {
        return "bus-stop-release";
    }

    @Override
    public String source() {
        return "seen in practice: an unacknowledged frame is repeated for ever, and the queue behind it goes out when a"
                + " drive comes back";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        if (predictions
                .machine()
                .bus()
                .figures()
                .known(BusFigure.COMMAND_PERIOD)
                .isEmpty()) {
            return List.of();
        }
        Optional<StoppedQueue> queue = predictions.machine().bus().stoppedQueue();
        return List.of(queue.map(this::judged).orElseGet(this::unsaid));
    }

    private Finding judged(StoppedQueue queue) {
        boolean kept = queue == StoppedQueue.KEPT;
        return Draft.of(this, SUBJECT)
                .verdict(kept ? Verdict.FAILS : Verdict.HOLDS)
                .says(Phrase.of("commands that wait while the axes are stopped are {what}")
                        .with("what", kept ? "kept and sent when the stop is released" : "dropped"))
                .because(Phrase.of(
                        "without a powered drive nobody acknowledges, and the first frame is repeated for ever"))
                .remedy(Phrase.of(
                        "empty the transmit queue on stop, start again from the actual position, keep one powered"
                                + " node that acknowledges"))
                .done();
    }

    private Finding unsaid() {
        return Draft.of(this, SUBJECT)
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of("not known: what becomes of commands that wait while the axes are stopped"))
                .remedy(Phrase.of("stop with the axes lifted off the ground, release, and watch the first commands"))
                .needs(List.of(new Need(
                        "what becomes of commands queued during a stop",
                        "commands_while_stopped: dropped, once the host empties its queue")))
                .done();
    }
}
