package servowright.engine.findings;

import java.util.List;
import servowright.engine.acceptance.Judge;
import servowright.engine.bus.CommonMode;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BusFigure;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** The voltage between the grounds of two nodes against the common mode range of an ordinary receiver. */
final class BusGroundRule implements BusRule {
    /** Peaks while motors accelerate go far beyond what a meter shows: aim at a seventh of the range. */
    private static final double MARGIN = 0.85;

    @Override
    public String id() {
        return "bus-ground-shift";
    }

    @Override
    public String source() {
        return "levels and the range of -2 to +7 V from transceiver data sheets that quote ISO 11898-2 (seen); the aim of"
                + " 0.5 V is common practice";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.machine().bus().figures().known(BusFigure.GROUND_SHIFT).stream()
                .map(this::judged)
                .toList();
    }

    private Finding judged(Known shift) {
        double most = CommonMode.mostShift(CommonMode.Range.ORDINARY);
        Known limit = Known.exact(Quantity.of(most, "V"), Origin.DERIVED, "common mode range");
        CommonMode lines = CommonMode.of(Math.max(0, shift.si()), CommonMode.Range.ORDINARY);
        return Draft.of(this, SUBJECT)
                .verdict(Judge.atMost(shift, limit, MARGIN).verdict())
                .says(Phrase.of("grounds differ by {shift}, receivers bear {limit}")
                        .with("shift", shift, "V")
                        .with("limit", limit, "V"))
                .because(Phrase.of("the lines come between {lowest} and {highest}, the range is -2 V to 7 V")
                        .with("lowest", Quantity.of(lines.lowest(), "V"), "V")
                        .with("highest", Quantity.of(lines.highest(), "V"), "V"))
                .remedy(Phrase.of(
                        "motor current out of the shared ground, a bus ground wire, or isolated transceivers"))
                .wouldSettle(
                        "the ground shift", "a scope on two channels between the node grounds while motors accelerate")
                .atMost(shift, limit, "V")
                .done();
    }
}
