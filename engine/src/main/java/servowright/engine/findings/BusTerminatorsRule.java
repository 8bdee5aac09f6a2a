package servowright.engine.findings;

import java.util.List;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bus.Terminators;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** Two terminators, one at each end. */
final class BusTerminatorsRule implements BusRule {
    private static final int WANTED = 2;
    private static final double OHM = 120;
    private static final double NODE_OHM = 30_000;

    @Override
    public String id() {
        return "bus-terminators";
    }

    @Override
    public String source() {
        return "ISO 11898-2, one terminator at each end (text not opened); 120 ohm and readings are common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.machine().bus().figures().known(BusFigure.TERMINATORS).stream()
                .map(count -> answered(count, predictions.machine().axes().size() + 1))
                .toList();
    }

    private Finding answered(Known stated, int nodes) {
        int count = (int) Math.round(stated.si());
        double wanted = Terminators.readingOhm(OHM, WANTED, nodes, NODE_OHM);
        return Draft.of(this, SUBJECT)
                .verdict(count == WANTED ? Verdict.HOLDS : Verdict.FAILS)
                .says(Phrase.of(
                                "{count} terminators: between the lines an ohmmeter shows {reading}, it should {wanted}")
                        .with("count", count)
                        .with("reading", Quantity.of(Terminators.readingOhm(OHM, count, nodes, NODE_OHM), "ohm"), "ohm")
                        .with("wanted", Quantity.of(wanted, "ohm"), "ohm"))
                .because(
                        Phrase.of("power off; {nodes} nodes of 30 kohm assumed").with("nodes", nodes))
                .remedy(Phrase.of(
                        count < WANTED
                                ? "one terminator at each end of the trunk"
                                : "switch off all terminators but those at the two ends"))
                .done();
    }
}
