package servowright.engine.prediction;

import java.util.List;
import servowright.engine.known.Outcome;

/**
 * What is predicted of one axis.
 *
 * @param continuousLimit motor current it stands for good
 * @param peakLimit       motor current it stands briefly
 * @param duties          duty by duty
 */
public record AxisPrediction(
        AxisParts parts,
        Outcome<CurrentLimit> continuousLimit,
        Outcome<CurrentLimit> peakLimit,
        List<DutyPrediction> duties) {
    public AxisPrediction {
        duties = List.copyOf(duties);
    }

    static AxisPrediction of(AxisParts parts) {
        return new AxisPrediction(
                parts,
                CurrentLimitStudy.continuous(parts),
                CurrentLimitStudy.peak(parts),
                parts.axis().duties().values().stream()
                        .map(duty -> DutyPrediction.of(parts, duty))
                        .toList());
    }

    public String name() {
        return parts.name();
    }
}
