package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.prediction.Predictions;

/** A rule about what the bench saw of the angle sensor of an axis; silent where it saw nothing. */
interface SensorBenchRule extends Rule {
    /** How the sensor stands; empty when the rule does not apply to it. */
    Optional<Finding> judge(IdentifiedAxis axis);

    @Override
    default Finding.Area area() {
        return Finding.Area.BENCH;
    }

    @Override
    default List<Finding> examine(Predictions predictions) {
        return predictions.identified().axes().values().stream()
                .map(this::judge)
                .flatMap(Optional::stream)
                .toList();
    }
}
