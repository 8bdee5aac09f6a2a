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

/** The RMS torque of a duty against the torque the motor's label allows for good; only where it states one. */
final class RatedTorqueRule implements DutyRule {
    /** Ratings are given for a cool room and a good mounting. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "rated-torque";
    }

    @Override
    public Area area() {
        return Area.HEAT;
    }

    @Override
    public String source() {
        return "the motor's own rating; 15 % margin is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        Optional<Known> rated = axis.parts().motor().flatMap(m -> m.figures().known(MotorFigure.RATED_TORQUE));
        return rated.map(limit ->
                duty.demand().fold(a -> answered(axis, duty, a, limit), m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Demand> answer, Known limit) {
        Known asked = answer.value().rmsTorque();
        Judgement judgement = Judge.atMost(asked, limit, MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks {asked} RMS, the label gives {limit} for good")
                        .with("asked", asked, "N m")
                        .with("limit", limit, "N m"))
                .because(Phrase.of("heat follows the mean square of the torque"))
                .remedy(Phrase.of("less load or longer rests, more gear, or a motor rated {needed}")
                        .with("needed", asked.times(1 / (1 - MARGIN)).value(), "N m"))
                .wouldSettle("the load of the axis", "the current during the duty, times torque per ampere")
                .atMost(asked, limit, "N m")
                .from(answer)
                .done();
    }
}
