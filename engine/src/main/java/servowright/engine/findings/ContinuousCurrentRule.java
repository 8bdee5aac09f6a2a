package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.findings.Finding.Area;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Current;
import servowright.engine.prediction.DutyPrediction;

/** The current for the RMS torque of a duty against what drive and motor stand for good. */
final class ContinuousCurrentRule implements DutyRule {
    /** Room for heat that is not counted: iron loss, a warm drive, a dirty fin. */
    private static final double MARGIN = 0.15;

    @Override
    public String id() {
        return "continuous-current";
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
                Current::rms,
                "asks {asked} RMS over the cycle (phase peak), {by} gives {limit} for good",
                "{less} less load or longer rests, {more} more gear, or {needed} for good");
        return Optional.of(question.judged(axis, duty, axis.continuousLimit()));
    }
}
