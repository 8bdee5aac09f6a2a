package servowright.engine.findings;

import java.util.List;
import servowright.engine.acceptance.Judge;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.Predictions;

/** The share of the bus that all messages take. */
final class BusLoadRule implements BusRule {
    /** Room for repeated frames and for what will be added. */
    private static final double MARGIN = 0.30;

    @Override
    public String id() {
        return "bus-load";
    }

    @Override
    public String source() {
        return "common practice, no source: at most 70 % of the bus in the worst case; frame lengths after Davis, Burns,"
                + " Bril, Lukkien 2007 (recalled)";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return onPlan(predictions, plan -> List.of(answered(plan)));
    }

    private Finding answered(Answer<BusPlan> answer) {
        BusPlan plan = answer.value();
        Known load = BusRule.share(plan.load());
        Known all = BusRule.share(1);
        return Draft.of(this, SUBJECT)
                .verdict(Judge.atMost(load, all, MARGIN).verdict())
                .says(Phrase.of("{count} messages load the bus with {load}")
                        .with("count", plan.messages().size())
                        .with("load", load, "%"))
                .because(Phrase.of("every frame with the most stuff bits it can get; with the fewest {least}")
                        .with("least", BusRule.share(plan.leastLoad()), "%"))
                .remedy(Phrase.of("longer periods by {stretch}, fewer bytes, or FD frames")
                        .with("stretch", BusRule.share(Math.max(0, plan.load() / (1 - MARGIN) - 1)), "%"))
                .atMost(load, all, "%")
                .from(answer)
                .done();
    }
}
