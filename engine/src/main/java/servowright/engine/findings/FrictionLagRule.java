package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;

/** How far friction held the rotor from the field when its offset was sought. */
final class FrictionLagRule implements SensorBenchRule {
    /** A fifth of the holding torque, and half of it. */
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(12, 30);

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
        Phrase statement = Phrase.of(
                        "friction held the rotor {value} electrical from the field, {comfortable} wanted, {most} at most")
                .with("value", value, "deg");
        return ALLOWED.judged(this, axis.name(), value, statement)
                .because(Phrase.of("what differs between the directions stays in the offset, and grows with the lag"))
                .remedy(Phrase.of("more current while the offset is sought, gear and load taken off"))
                .wouldSettle("the friction lag", "stops or a drag with twice the current")
                .from(answer)
                .done();
    }
}
