package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Commutation;
import servowright.engine.prediction.DutyPrediction;

/** Electrical angle lost between measuring and acting, at top speed, if the drive does not compensate it. */
final class AngleLostRule implements DutyRule {
    /** cos 10° = 0.985: nobody notices; cos 30° = 0.87: a seventh is gone, and as d current it may weaken the field. */
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(10, 30);

    @Override
    public String id() {
        return "angle-lost";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "common practice, no source: 30 degrees at most, 10 unnoticed; torque falls with the cosine";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        return duty.moves()
                ? duty.commutation().fold(a -> Optional.of(answered(axis, duty, a)), m -> Optional.empty())
                : Optional.empty();
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Commutation> answer) {
        Known lost = answer.value().angleLost();
        Phrase statement = saying(
                        axis,
                        duty,
                        "{lost} electrical lost to delay at top speed, {comfortable} wanted, {most} at most")
                .with("lost", lost, "deg");
        return ALLOWED.judged(this, axis.name(), lost, statement)
                .because(Phrase.of("the rotor moves on while the angle is read and the voltage computed"))
                .remedy(Phrase.of("let the drive advance the angle by speed times delay; else a faster loop or sensor"))
                .wouldSettle("the delay of the sensor", "the zero angle at two speeds in both directions")
                .from(answer)
                .done();
    }
}
