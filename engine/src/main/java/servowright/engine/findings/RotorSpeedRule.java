package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.MotorFigure;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Demand;
import servowright.engine.prediction.DutyPrediction;

/** The top speed of a duty against the speed the rotor stands; only where the motor states one. */
final class RotorSpeedRule implements DutyRule {
    /** Room for overshoot, and for a supply fuller than thought. */
    private static final double MARGIN = 0.10;

    @Override
    public String id() {
        return "rotor-speed";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "the motor's own limit; 10 % margin is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        Optional<Known> most = axis.parts().motor().flatMap(m -> m.figures().known(MotorFigure.TOP_SPEED));
        return most.filter(m -> duty.moves())
                .map(limit -> duty.demand()
                        .fold(a -> answered(axis, duty, a, limit), m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Demand> answer, Known limit) {
        Known asked = answer.value().topSpeed();
        Judgement judgement = Judge.atMost(asked, limit, MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks {asked} at the motor, the rotor stands {limit}")
                        .with("asked", asked, "rpm")
                        .with("limit", limit, "rpm"))
                .because(Phrase.of("beyond it magnets may come off and bearings run hot"))
                .remedy(Phrase.of("less gear or less speed"))
                .wouldSettle("the top speed of the duty", "say it exactly")
                .atMost(asked, limit, "rpm")
                .from(answer)
                .done();
    }
}
