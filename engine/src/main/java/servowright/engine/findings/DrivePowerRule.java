package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.DriveFigure;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Draw;
import servowright.engine.prediction.DutyPrediction;

/** The mean power of a duty against what the drive takes for good; only where the drive states a power. */
final class DrivePowerRule implements DutyRule {
    /** Room for losses that are not counted: bridge and iron. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "drive-power";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return "power balance; the drive's own limit; 15 % margin is common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        Optional<Known> limit = axis.parts().drive().flatMap(d -> d.figures().known(DriveFigure.POWER));
        return limit.map(most ->
                duty.draw().fold(a -> answered(axis, duty, a, most), m -> Draft.notShown(this, axis.name(), m)));
    }

    private Finding answered(AxisPrediction axis, DutyPrediction duty, Answer<Draw> answer, Known most) {
        Known mean = answer.value().meanPower();
        Judgement judgement = Judge.atMost(mean, most, MARGIN);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(saying(axis, duty, "asks at most {mean} over the cycle, the drive takes {limit}")
                        .with("mean", mean, "W")
                        .with("limit", most, "W"))
                .because(Phrase.of("shaft power and copper loss; at its peak {peak}")
                        .with("peak", answer.value().peakPower(), "W"))
                .remedy(Phrase.of("longer rests, less speed, or a drive for {needed}")
                        .with("needed", mean.times(1 / (1 - MARGIN)).value(), "W"))
                .wouldSettle("the mean power", "supply voltage and current during the duty")
                .atMost(mean, most, "W")
                .from(answer)
                .done();
    }
}
