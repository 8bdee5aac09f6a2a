package servowright.engine.findings;

import java.util.function.Function;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Current;
import servowright.engine.prediction.CurrentLimit;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.quantity.Quantity;

/**
 * A current that a duty asks for against what drive and motor stand.
 *
 * @param rule      on whose behalf it is judged
 * @param margin    share of the limit to keep free
 * @param asked     which current of the duty it is
 * @param statement names {asked}, {by} and {limit}
 * @param remedy    names {less}, {more} and {needed}
 */
record CurrentAgainstLimit(
        DutyRule rule, double margin, Function<Current, Known> asked, String statement, String remedy) {
    static final String SOURCE =
            "T = 3/2 p λ iq, Krause, Wasynczuk, Sudhoff, Pekarek 2013, ch. 4 (recalled); 15 % margin"
                    + " is common practice";

    Finding judged(AxisPrediction axis, DutyPrediction duty, Outcome<CurrentLimit> most) {
        return most.fold(
                limit -> duty.current()
                        .fold(
                                current -> answered(axis, duty, current, limit),
                                m -> Draft.notShown(rule, axis.name(), m)),
                m -> Draft.notShown(rule, axis.name(), m));
    }

    private Finding answered(
            AxisPrediction axis, DutyPrediction duty, Answer<Current> current, Answer<CurrentLimit> limit) {
        Known wanted = asked.apply(current.value());
        Known most = limit.value().current();
        Judgement judgement = Judge.atMost(wanted, most, margin);
        double over = wanted.si() / (most.si() * (1 - margin));
        return Draft.of(rule, axis.name())
                .verdict(judgement.verdict())
                .says(rule.saying(axis, duty, statement)
                        .with("asked", wanted, "A")
                        .with("by", limit.value().setBy())
                        .with("limit", most, "A"))
                .because(Phrase.of("torque per ampere is {kt} with warm magnets")
                        .with("kt", current.value().torqueConstant(), "N m/A"))
                .remedy(Phrase.of(remedy)
                        .with("less", Quantity.number(Math.max(0, 1 - 1 / over)), "%")
                        .with("more", Quantity.number(Math.max(0, over - 1)), "%")
                        .with("needed", wanted.times(1 / (1 - margin)).value(), "A"))
                .wouldSettle("a narrower torque per ampere", "a spin of the motor with the terminals open")
                .atMost(wanted, most, "A")
                .worked(current.working().then(limit.working()), Draft.both(current.assumptions(), limit.assumptions()))
                .done();
    }
}
