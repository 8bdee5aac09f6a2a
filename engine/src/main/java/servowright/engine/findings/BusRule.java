package servowright.engine.findings;

import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.machine.Bus;
import servowright.engine.machine.BusFigure;
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
    static boolean planned(Predictions predictions) {
        Bus bus = predictions.machine().bus();
        return !bus.messages().isEmpty()
                || bus.figures().known(BusFigure.COMMAND_PERIOD).isPresent()
                || bus.figures().known(BusFigure.FEEDBACK_PERIOD).isPresent();
    }

    static Known time(long ns) {
        return Known.exact(Quantity.of(ns * 1e-9, "s"), Origin.DERIVED, "bus plan");
    }

    static Known share(double share) {
        return Known.exact(Quantity.number(share), Origin.DERIVED, "bus plan");
    }
}
