package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.findings.Finding.Area;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.StatedFigure;

/** A rule that is judged motor by motor, on what was declared of it and what the bench found. */
interface MotorRule extends Rule {
    /**
     * How one motor stands; empty when the rule does not apply to it.
     *
     * @param stated its declared constants as read on every basis
     */
    Optional<Finding> judge(IdentifiedMotor motor, List<StatedFigure> stated);

    @Override
    default Area area() {
        return Area.MOTOR;
    }

    @Override
    default List<Finding> examine(Predictions predictions) {
        return predictions.identified().motors().values().stream()
                .map(motor -> judge(motor, predictions.stated().getOrDefault(motor.name(), List.of())))
                .flatMap(Optional::stream)
                .toList();
    }
}
