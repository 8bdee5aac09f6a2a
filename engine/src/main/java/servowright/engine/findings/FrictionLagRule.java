package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/** How far friction held the rotor from the field when its offset was sought. */
final class FrictionLagRule implements SensorBenchRule {
    /** Half of the holding torque. */
    private static final Known MOST = Known.exact(Quantity.of(30, "deg"), Origin.ASSUMED, "common practice");

    /** A fifth of the holding torque. */
    private static final Known COMFORTABLE = Known.exact(Quantity.of(12, "deg"), Origin.ASSUMED, "common practice");

    @Override
    public String id() {
        return "friction-lag";
    }

    @Override
    public String source() {
        return "torque balance at a standing field: 12 degrees are 20 % friction, 30 degrees 50 %; the limits are common practice";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.best(AxisParameter.FRICTION_LAG).fold(a -> Optional.of(answered(axis, a)), m -> Optional.empty());
    }

    private Finding answered(IdentifiedAxis axis, Answer<Known> answer) {
        Known value = answer.value();
        Judgement judgement = Judge.atMost(value, MOST, COMFORTABLE);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(Phrase.of(
                                "friction held the rotor {value} electrical from the field, {comfortable} wanted, {most} at most")
                        .with("value", value, "deg")
                        .with("comfortable", COMFORTABLE, "deg")
                        .with("most", MOST, "deg"))
                .because(Phrase.of("what differs between the directions stays in the offset, and grows with the lag"))
                .remedy(Phrase.of("more current while the offset is sought, gear and load taken off"))
                .wouldSettle("the friction lag", "stops or a drag with twice the current")
                .atMost(value, MOST, "deg")
                .from(answer)
                .done();
    }
}
