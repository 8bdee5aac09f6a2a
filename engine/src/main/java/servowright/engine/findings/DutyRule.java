package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.DutyPrediction;
import servowright.engine.prediction.Predictions;

/** A rule that is judged duty by duty; of each axis the worst duty speaks. */
interface DutyRule extends Rule {
    /** How one duty stands; empty when the rule does not apply to it. */
    Optional<Finding> judge(AxisPrediction axis, DutyPrediction duty);

    /** Whether an axis without any duty is worth saying so. */
    default boolean asksForDuty() {
        return false;
    }

    /** A statement about one duty, which names it where the axis has more than one. */
    default Phrase saying(AxisPrediction axis, DutyPrediction duty, String template) {
        return axis.duties().size() > 1
                ? Phrase.of(template + ", in {duty}").with("duty", duty.duty().name())
                : Phrase.of(template);
    }

    @Override
    default List<Finding> examine(Predictions predictions) {
        return predictions.axes().stream()
                .map(this::worst)
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Finding> worst(AxisPrediction axis) {
        if (axis.duties().isEmpty()) {
            Need duty =
                    new Need("a duty of " + axis.name(), "say what it has to do: axes / " + axis.name() + " / duties");
            return asksForDuty()
                    ? Optional.of(Draft.notShown(this, axis.name(), new Missing<>(List.of(duty))))
                    : Optional.empty();
        }
        return axis.duties().stream()
                .map(duty -> judge(axis, duty))
                .flatMap(Optional::stream)
                .min(Comparator.comparing(Finding::verdict).thenComparingDouble(Finding::relativeRoom));
    }
}
