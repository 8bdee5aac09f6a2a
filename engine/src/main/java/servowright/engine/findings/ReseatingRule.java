package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;

/** Whether the commutation offset still holds after the mount was taken apart and together. */
final class ReseatingRule implements SensorBenchRule {
    /** cos 3° = 0.999, cos 10° = 0.985. */
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(3, 10);

    @Override
    public String id() {
        return "offset-after-reseating";
    }

    @Override
    public String source() {
        return "common practice, no source: 3 electrical degrees go unnoticed, 10 cost 1.5 % of the torque";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.best(AxisParameter.RESEATING_SPREAD)
                .fold(a -> Optional.of(answered(axis, a)), m -> Optional.empty());
    }

    private Finding answered(IdentifiedAxis axis, Answer<Known> answer) {
        Known value = answer.value();
        Phrase statement = Phrase.of(
                        "the offset moves by {value} electrical from seating to seating, {comfortable} wanted, {most} at most")
                .with("value", value, "deg");
        return ALLOWED.judged(this, axis.name(), value, statement)
                .because(Phrase.of("magnet and board come back elsewhere; an offset belongs to one seating"))
                .remedy(Phrase.of(
                        "pins or a shoulder for board and magnet, or find the offset anew after every seating"))
                .wouldSettle("the spread of the offset", "more seatings, five or six")
                .from(answer)
                .done();
    }
}
