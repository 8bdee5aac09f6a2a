package servowright.engine.findings;

import java.util.ArrayList;
import java.util.Comparator;
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

/** The longest branch or all of them together, whichever stands worse, against what usage allows at the rate. */
final class BusStubRule implements BusRule {
    private static final double MARGIN = 0.5;

    @Override
    public String id() {
        return "bus-stub";
    }

    @Override
    public String source() {
        return "rules in use as reprinted in public fieldbus manuals (seen): 1 Mbit/s 1.5 m each, 7.5 m together";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        Figures<BusFigure> bus = predictions.machine().bus().figures();
        Optional<Known> rate = bus.known(BusFigure.RATE);
        List<Finding> found = new ArrayList<>();
        rate.ifPresent(r -> {
            BusPractice row = BusPractice.at(r.si());
            bus.known(BusFigure.STUB).ifPresent(s -> found.add(judged(s, row.stubMetre(), "the longest branch is", r)));
            bus.known(BusFigure.STUBS).ifPresent(s -> found.add(judged(s, row.stubsMetre(), "all branches are", r)));
        });
        return found.stream().min(Comparator.comparingDouble(Finding::relativeRoom)).stream()
                .toList();
    }

    private Finding judged(Known metre, double most, String what, Known rate) {
        Known limit = Known.exact(Quantity.of(most, "m"), Origin.DERIVED, "usage");
        return Draft.of(this, SUBJECT)
                .verdict(Judge.atMost(metre, limit, MARGIN).verdict())
                .says(Phrase.of("{what} {metre}, usage at {rate} is at most {limit}")
                        .with("what", what)
                        .with("metre", metre, "m")
                        .with("rate", rate, "kbit/s")
                        .with("limit", limit, "m"))
                .because(Phrase.of("a branch sends an echo of each edge back into the bit"))
                .remedy(Phrase.of("lead the trunk through each node, or a lower rate"))
                .wouldSettle("the length of the branches", "a tape measure")
                .atMost(metre, limit, "m")
                .done();
    }
}
