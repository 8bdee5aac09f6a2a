package servowright.engine.findings;

import java.util.List;
import java.util.function.Function;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusFigure;
import servowright.engine.prediction.BusPlan;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** A rule about the bus. */
interface BusRule extends Rule {
    String SUBJECT = "bus";

    @Override
    default Area area() {
        return Area.BUS;
    }

    /** Whether any traffic was described. */
    private static boolean planned(Predictions predictions) {
        Bus bus = predictions.machine().bus();
        return !bus.messages().isEmpty()
                || bus.figures().known(BusFigure.COMMAND_PERIOD).isPresent()
                || bus.figures().known(BusFigure.FEEDBACK_PERIOD).isPresent();
    }

    /** What there is to say of the plan, where there is traffic to plan. */
    default List<Finding> onPlan(Predictions predictions, Function<Answer<BusPlan>, List<Finding>> answered) {
        return planned(predictions)
                ? predictions.bus().fold(answered, m -> List.of(Draft.notShown(this, SUBJECT, m)))
                : List.of();
    }

    static Known time(long ns) {
        return Known.exact(Quantity.of(ns * 1e-9, "s"), Origin.DERIVED, "bus plan");
    }

    static Known share(double share) {
        return Known.exact(Quantity.number(share), Origin.DERIVED, "bus plan");
    }
}
