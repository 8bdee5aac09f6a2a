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

/** The mean current of all axes against the fuse; only where a fuse is stated. */
final class FuseRule implements Rule {
    /** A fuse carries its rated current only when cool: 1.25 times the lasting current is the usual choice. */
    private static final double MARGIN = 0.20;

    static final String SUBJECT = "supply";

    @Override
    public String id() {
        return "fuse";
    }

    @Override
    public Area area() {
        return Area.SUPPLY;
    }

    @Override
    public String source() {
        return "common practice, no source: fuse at least 1.25 times the lasting current; it protects the wire";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Optional<Known> fuse =
                predictions.machine().supply().flatMap(s -> s.figures().known(SupplyFigure.FUSE));
        return fuse
                .map(f -> predictions.total().fold(a -> answered(a, f), m -> Draft.notShown(this, SUBJECT, m)))
                .stream()
                .toList();
    }

    private Finding answered(Answer<SupplyTotal> total, Known fuse) {
        Known mean = total.value().mean();
        Judgement judgement = Judge.atMost(mean, fuse, MARGIN);
        return Draft.of(this, SUBJECT)
                .verdict(judgement.verdict())
                .says(Phrase.of("all axes ask at most {mean} in the mean, the fuse is {fuse}")
                        .with("mean", mean, "A")
                        .with("fuse", fuse, "A"))
                .because(Phrase.of("with the supply empty; for moments up to {peak}")
                        .with("peak", total.value().peak(), "A"))
                .remedy(Phrase.of("a fuse of {needed} if the wire carries it, or not all axes at once")
                        .with("needed", mean.times(1 / (1 - MARGIN)).value(), "A"))
                .wouldSettle("the mean supply current", "a clamp meter at the supply during the heaviest work")
                .atMost(mean, fuse, "A")
                .from(total)
                .done();
    }
}
