package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Mount;
import servowright.engine.prediction.Predictions;

/** A rule about the magnet of an axis before its sensor; silent where no mount is described. */
interface MountRule extends Rule {
    /** How the mount stands; empty when the rule does not apply to it. */
    Optional<Finding> judge(AxisPrediction axis, Answer<Mount> mount);

    /** Whether this rule is the one to say what is missing of a mount. */
    default boolean asksForFigures() {
        return false;
    }

    @Override
    default Finding.Area area() {
        return Finding.Area.MOUNT;
    }

    @Override
    default List<Finding> examine(Predictions predictions) {
        return predictions.axes().stream()
                .map(axis -> axis.mount()
                        .flatMap(mount -> mount.fold(
                                a -> judge(axis, a),
                                m -> asksForFigures()
                                        ? Optional.of(Draft.notShown(this, axis.name(), m))
                                        : Optional.empty())))
                .flatMap(Optional::stream)
                .toList();
    }
}
