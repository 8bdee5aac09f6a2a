package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.prediction.Heat;

/** The RMS torque of a duty against what the copper heat allows for good. */
final class TorqueReserveRule implements DutyRule {
    /** Room for iron loss, friction heat and a motor that is mounted worse than thought. */
    private static final double MARGIN = 0.10;

    @Override
    public String id() {
        return "torque-reserve";
    }

    @Override
    public Area area() {
        return Area.HEAT;
    }

    @Override
    public String source() {
        return "heat balance of the copper with resistance that grows as it warms; 10 % margin is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        return Optional.of(duty.heat().fold(a -> answered(axis, duty, a), m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Heat> answer) {
        Heat heat = answer.value();
        Judgement judgement = Judge.atLeast(heat.has(), heat.asked(), MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks {asked} for good, has {has} with the winding at {limit}")
                        .with("asked", heat.asked(), "N m")
                        .with("has", heat.has(), "N m")
                        .with("limit", heat.limit(), "degC"))
                .because(reason(heat))
                .remedy(Phrase.of(
                                "less load or longer rests, more gear, cooling, or a motor that gives {needed} for good")
                        .with("needed", heat.asked().times(1 + MARGIN).value(), "N m"))
                .wouldSettle(
                        "a narrower thermal resistance",
                        "a heating run of 20 min at a steady current, resistance read before and after")
                .atLeast(heat.has(), heat.asked(), "N m")
                .from(answer)
                .done();
    }

    private static Phrase reason(Heat heat) {
        return heat.settled()
                .map(kelvin -> Phrase.of("the duty would settle the winding at {settled}")
                        .with("settled", kelvin, "degC"))
                .orElseGet(
                        () -> Phrase.of("the winding never settles: its resistance grows faster than the heat leaves"));
    }
}
