package servowright.engine.prediction;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome;

/**
 * What is predicted of one axis.
 *
 * @param continuousLimit motor current it stands for good
 * @param peakLimit       motor current it stands briefly
 * @param mount           magnet before its sensor; empty when none is described
 * @param duties          duty by duty
 */
public record AxisPrediction(
        AxisParts parts,
        Outcome<CurrentLimit> continuousLimit,
        Outcome<CurrentLimit> peakLimit,
        Optional<Outcome<Mount>> mount,
        List<DutyPrediction> duties) {
    public AxisPrediction {
        duties = List.copyOf(duties);
    }

    static AxisPrediction of(AxisParts parts) {
        return new AxisPrediction(
                parts,
                CurrentLimitStudy.continuous(parts),
                CurrentLimitStudy.peak(parts),
                MountStudy.of(parts),
                parts.axis().duties().values().stream()
                        .map(duty -> DutyPrediction.of(parts, duty))
                        .toList());
    }

    public String name() {
        return parts.name();
    }
}
