package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.SupplyTotal;

/** The peak current of all axes together against what the supply gives; only where that is stated. */
final class SupplyCurrentRule implements Rule {
    /** Room for losses that are not counted and for other loads. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "supply-current";
    }

    @Override
    public Area area() {
        return Area.SUPPLY;
    }

    @Override
    public String source() {
        return "power balance; the supply's own limit; 15 % margin is common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Optional<Known> current =
                predictions.machine().supply().flatMap(s -> s.figures().known(SupplyFigure.CURRENT));
        return current
                .map(c -> predictions.total().fold(a -> answered(a, c), m -> Draft.notShown(this, FuseRule.SUBJECT, m)))
                .stream()
                .toList();
    }

    private Finding answered(Answer<SupplyTotal> total, Known gives) {
        Known peak = total.value().peak();
        Judgement judgement = Judge.atMost(peak, gives, MARGIN);
        return Draft.of(this, FuseRule.SUBJECT)
                .verdict(judgement.verdict())
                .says(Phrase.of("all axes at once ask {peak} for a moment, the supply gives {gives}")
                        .with("peak", peak, "A")
                        .with("gives", gives, "A"))
                .because(Phrase.of("supply current is power over voltage, not the sum of the motor currents"))
                .remedy(Phrase.of("start the axes one after another, or a supply for {needed}")
                        .with("needed", peak.times(1 / (1 - MARGIN)).value(), "A"))
                .wouldSettle("the peak supply current", "a scope on a shunt at the supply during the heaviest work")
                .atMost(peak, gives, "A")
                .from(total)
                .done();
    }
}
