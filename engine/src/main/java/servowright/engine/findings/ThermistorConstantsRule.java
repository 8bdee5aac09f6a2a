package servowright.engine.findings;

import java.util.List;
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

/** Declared constants of a thermistor against its calibration. The bench says by how much they read wrong as the figure named {@code astray}. */
final class ThermistorConstantsRule implements Rule {
    private static final Known MOST = Known.exact(Quantity.of(5, "K"), Origin.ASSUMED, "common practice");

    private static final Known COMFORTABLE = Known.exact(Quantity.of(2, "K"), Origin.ASSUMED, "common practice");

    @Override
    public String id() {
        return "thermistor-constants";
    }

    @Override
    public Area area() {
        return Area.BENCH;
    }

    @Override
    public String source() {
        return "common practice, no source: a winding sensor within 2 K is good, beyond 5 K it no longer guards the winding";
    }

    private record Astray(TestResult test, Known kelvin) {}

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.identified().tests().stream()
                .flatMap(ThermistorConstantsRule::astray)
                .map(this::judge)
                .toList();
    }

    private static Stream<Astray> astray(TestResult test) {
        return test.details().stream()
                .map(detail -> detail.figures().get("astray"))
                .filter(Phrase.Figure.class::isInstance)
                .map(part -> new Astray(test, ((Phrase.Figure) part).value()));
    }

    private Finding judge(Astray found) {
        Judgement judgement = Judge.atMost(found.kelvin(), MOST, COMFORTABLE);
        return Draft.of(this, found.test().test().motor())
                .verdict(judgement.verdict())
                .says(Phrase.of("the declared constants of the thermistor read wrong by {k} in {test}")
                        .with("k", found.kelvin(), "K")
                        .with("test", found.test().test().id()))
                .because(Phrase.of(
                        "a winding that is read too cold is not protected, one that is read too warm stops early"))
                .remedy(
                        Phrase.of(
                                "use the constants of the calibration, and check divider and converter against a known resistor"))
                .atMost(found.kelvin(), MOST, "K")
                .done();
    }
}
