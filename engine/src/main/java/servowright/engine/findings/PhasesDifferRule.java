package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.bench.TestResult;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/**
 * The three phases of a winding against each other. The bench says in its details by how much they differ, as the figure
 * named {@code spread}.
 */
final class PhasesDifferRule implements Rule {
    /** A sound winding with sound contacts stays within this. */
    private static final Known MOST = Known.exact(Quantity.of(10, "%"), Origin.ASSUMED, "common practice");

    private static final Known COMFORTABLE = Known.exact(Quantity.of(4, "%"), Origin.ASSUMED, "common practice");

    @Override
    public String id() {
        return "phases-differ";
    }

    @Override
    public Area area() {
        return Area.MOTOR;
    }

    @Override
    public String source() {
        return "common practice, no source: sound phases agree within 4 %, beyond 10 % something is broken";
    }

    private record Spread(TestResult test, Known share) {}

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.identified().motors().keySet().stream()
                .map(motor -> predictions.identified().tests().stream()
                        .filter(t -> t.test().motor().equals(motor))
                        .flatMap(PhasesDifferRule::spread)
                        .max(Comparator.comparingDouble(s -> s.share().si())))
                .flatMap(Optional::stream)
                .map(this::judge)
                .toList();
    }

    private static Stream<Spread> spread(TestResult test) {
        return test.details().stream()
                .map(detail -> detail.figures().get("spread"))
                .filter(Phrase.Figure.class::isInstance)
                .map(part -> new Spread(test, ((Phrase.Figure) part).value()));
    }

    private Finding judge(Spread spread) {
        Judgement judgement = Judge.atMost(spread.share(), MOST, COMFORTABLE);
        return Draft.of(this, spread.test().test().motor())
                .verdict(judgement.verdict())
                .says(Phrase.of("the phases differ by {spread} in {test}, {comfortable} is usual")
                        .with("spread", spread.share(), "%")
                        .with("test", spread.test().test().id())
                        .with("comfortable", COMFORTABLE, "%"))
                .because(Phrase.of("a bad contact, a shorted turn or a broken strand shows in one phase alone"))
                .remedy(Phrase.of("repeat with clean contacts; if it stays in the same phase, do not run the motor"))
                .atMost(spread.share(), MOST, "%")
                .done();
    }
}
