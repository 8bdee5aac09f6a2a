package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.bus.BusPractice;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.machine.Figures;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** The trunk against the length that usage allows at the rate. */
final class BusLengthRule implements BusRule {
    private static final double MARGIN = 0.2;

    @Override
    public String id() {
        return "bus-length";
    }

    @Override
    public String source() {
        return "public reprint of CiA DS-102 V2.0 (seen)";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Figures<BusFigure> bus = predictions.machine().bus().figures();
        Optional<Known> rate = bus.known(BusFigure.RATE);
        return bus.known(BusFigure.CABLE).stream()
                .flatMap(c -> rate.map(r -> length(c, r)).stream())
                .toList();
    }

    private Finding length(Known cable, Known rate) {
        Known limit = Known.exact(Quantity.of(BusPractice.at(rate.si()).trunkMetre(), "m"), Origin.DERIVED, "usage");
        return Draft.of(this, SUBJECT)
                .verdict(Judge.atMost(cable, limit, MARGIN).verdict())
                .says(Phrase.of("the trunk is {cable}, usage at {rate} is at most {limit}")
                        .with("cable", cable, "m")
                        .with("rate", rate, "kbit/s")
                        .with("limit", limit, "m"))
                .because(Phrase.of("a bit must reach the far end and its answer come back before it is sampled"))
                .remedy(Phrase.of("a lower rate, or a shorter trunk"))
                .wouldSettle("the length of the trunk", "a tape measure")
                .atMost(cable, limit, "m")
                .done();
    }
}
