package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Commutation;
import servowright.engine.prediction.DutyPrediction;

/** Steps of the current loop in one electrical turn at top speed. */
final class ControlStepsRule implements DutyRule {
    /** Below this many steps the control loses the rotor. */
    private static final Known LEAST = Known.number(10, Origin.ASSUMED, "common practice");

    /** From this many steps on the current is a good sine. */
    private static final Known COMFORTABLE = Known.number(20, Origin.ASSUMED, "common practice");

    @Override
    public String id() {
        return "control-steps";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "common practice, no source: 20 steps for a good sine, 10 at the least";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        if (!duty.moves()) {
            return Optional.empty();
        }
        return Optional.of(
                duty.commutation().fold(a -> answered(axis, duty, a), m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Commutation> answer) {
        Known steps = answer.value().steps();
        Judgement judgement = Judge.atLeast(steps, LEAST, COMFORTABLE);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(
                                axis,
                                duty,
                                "{steps} control steps per electrical turn, {comfortable} wanted, {least} at the least")
                        .with("steps", steps)
                        .with("comfortable", COMFORTABLE)
                        .with("least", LEAST))
                .because(Phrase.of("at {f} electrical the loop sees the rotor in coarse steps")
                        .with("f", answer.value().frequency(), "Hz"))
                .remedy(Phrase.of("a loop rate of {rate}, a motor with fewer pole pairs, or less speed")
                        .with(
                                "rate",
                                answer.value()
                                        .frequency()
                                        .times(COMFORTABLE.si())
                                        .value(),
                                "kHz"))
                .wouldSettle("the loop rate", "a pulse on a spare pin at every step, seen on a scope")
                .atLeast(steps, LEAST, "")
                .from(answer)
                .done();
    }
}
