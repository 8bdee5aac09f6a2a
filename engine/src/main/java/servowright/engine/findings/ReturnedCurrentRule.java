package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.SupplyTotal;

/** The current that comes back when all axes brake at once, against what the supply takes back; for batteries. */
final class ReturnedCurrentRule implements Rule {
    /** A cold or nearly full battery takes less. */
    private static final double MARGIN = 0.25;

    @Override
    public String id() {
        return "returned-current";
    }

    @Override
    public Area area() {
        return Area.SUPPLY;
    }

    @Override
    public String source() {
        return "power balance; 25 % margin is common practice, as cold and full batteries take less";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions
                .machine()
                .supply()
                .filter(s ->
                        s.kind() == SupplyKind.BATTERY || takesBack(predictions).isPresent())
                .map(s -> predictions
                        .total()
                        .fold(a -> judge(predictions, a), m -> Draft.notShown(this, FuseRule.SUBJECT, m)))
                .stream()
                .toList();
    }

    private static Optional<Known> takesBack(Predictions predictions) {
        return predictions.machine().supply().flatMap(s -> s.figures().known(SupplyFigure.TAKES_BACK));
    }

    private Finding judge(Predictions predictions, Answer<SupplyTotal> total) {
        return takesBack(predictions)
                .map(limit -> answered(total, limit))
                .orElseGet(() -> Draft.notShown(
                        this,
                        FuseRule.SUBJECT,
                        new Missing<>(List.of(new Need(
                                "the current that the battery takes back",
                                "its data sheet, charge current; then takes_back: 10 A")))));
    }

    private Finding answered(Answer<SupplyTotal> total, Known limit) {
        Known back = total.value().returned();
        Judgement judgement = Judge.atMost(back, limit, MARGIN);
        return Draft.of(this, FuseRule.SUBJECT)
                .verdict(judgement.verdict())
                .says(Phrase.of("all axes braking give back at most {back}, the supply takes {limit}")
                        .with("back", back, "A")
                        .with("limit", limit, "A"))
                .because(Phrase.of("what the supply does not take lifts its lines until a drive trips"))
                .remedy(Phrase.of("softer braking, a brake resistor, or a supply that takes {needed}")
                        .with("needed", back.times(1 / (1 - MARGIN)).value(), "A"))
                .wouldSettle("the current that comes back", "a clamp meter at the supply during the hardest stop")
                .atMost(back, limit, "A")
                .from(total)
                .done();
    }
}
