package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.findings.Finding.Area;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Current;
import servowright.engine.prediction.DutyPrediction;

/** The current for the peak torque of a duty against what drive and motor stand briefly. */
final class PeakCurrentRule implements DutyRule {
    /** Room for the control to correct with. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "peak-current";
    }

    @Override
    public Area area() {
        return Area.FIT;
    }

    @Override
    public String source() {
        return CurrentAgainstLimit.SOURCE;
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty) {
        CurrentAgainstLimit question = new CurrentAgainstLimit(
                this,
                MARGIN,
                Current::peak,
                "asks {asked} on the q axis, {by} gives {limit}",
                "{less} less acceleration or load, {more} more gear, or a drive for {needed}");
        return Optional.of(question.judged(axis, duty, axis.peakLimit()));
    }
}
