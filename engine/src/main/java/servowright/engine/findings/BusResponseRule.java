package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Verdict;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.PlannedMessage;
import servowright.engine.prediction.Predictions;

/** The guaranteed response time of each message against its deadline; one finding for the message that stands worst. */
final class BusResponseRule implements BusRule {
    /** Time for one frame sent again, and for what will be added. */
    private static final double MARGIN = 0.20;

    @Override
    public String id() {
        return "bus-response";
    }

    @Override
    public String source() {
        return "Davis, Burns, Bril, Lukkien, Real-Time Systems 35 (2007) 239-272 (abstract seen, equations recalled);"
                + " 20 % margin is common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return onPlan(predictions, plan -> List.of(answered(plan)));
    }

    private Finding answered(Answer<BusPlan> answer) {
        BusPlan plan = answer.value();
        PlannedMessage worst = plan.messages().stream()
                .max(Comparator.comparingDouble(BusResponseRule::use))
                .orElseThrow();
        long late = plan.messages().stream().filter(m -> use(m) > 1).count();
        Known deadline = BusRule.time(worst.response().message().deadlineNs());
        Draft draft = Draft.of(this, SUBJECT).from(answer);
        if (worst.response().worstNs() == Long.MAX_VALUE) {
            return draft.verdict(Verdict.FAILS)
                    .says(Phrase.of(
                                    "{message} has no latest arrival: the bus is full above it; {late} messages are late")
                            .with("message", worst.name())
                            .with("late", (double) late))
                    .because(Phrase.of("messages of higher priority and its own take the whole bus"))
                    .remedy(Phrase.of("longer periods, fewer bytes, or FD frames"))
                    .done();
        }
        Known response = BusRule.time(worst.response().worstNs());
        return draft.verdict(Judge.atMost(response, deadline, MARGIN).verdict())
                .says(Phrase.of("{message} arrives at the latest after {response}, its deadline is {deadline}")
                        .with("message", worst.name())
                        .with("response", response, "ms")
                        .with("deadline", deadline, "ms"))
                .because(Phrase.of("the message that stands worst of {count}; {late} are late; its arrival varies by"
                                + " {jitter}")
                        .with("count", plan.messages().size())
                        .with("late", (double) late)
                        .with("jitter", BusRule.time(worst.arrivalJitterNs()), "ms"))
                .remedy(Phrase.of("a lower identifier for it, ids: by deadlines, or longer periods above it"))
                .atMost(response, deadline, "ms")
                .done();
    }

    private static double use(PlannedMessage m) {
        return (double) m.response().worstNs() / m.response().message().deadlineNs();
    }
}
