package servowright.engine.findings;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.acceptance.PlanSeen;
import servowright.engine.bench.CapturedBus;
import servowright.engine.prediction.Predictions;

/** A rule about captures of the bus. */
interface SeenRule extends BusRule {
    /** What it says of one capture. */
    Stream<Draft> look(PlanSeen seen, String subject);

    @Override
    default List<Finding> examine(Predictions predictions) {
        List<CapturedBus> captures = predictions.identified().captures();
        return captures.stream()
                .map(c -> PlanSeen.of(predictions.bus(), c))
                .flatMap(seen -> look(seen, seen.subject(captures.size())))
                .map(Draft::done)
                .toList();
    }
}
