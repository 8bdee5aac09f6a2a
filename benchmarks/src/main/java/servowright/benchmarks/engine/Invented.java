package servowright.benchmarks.engine;

import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Place;
import servowright.engine.machine.Bus;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Machine;
import servowright.engine.machine.Motor;
import servowright.engine.machine.MotorFigure;

/** A machine to measure with. */
final class Invented {
    private Invented() {}

    /** One motor, called hub, and nothing else. */
    static Machine machine(Figures<MotorFigure> figures) {
        Motor motor = new Motor("hub", new Place("machine.yaml", 1, "motors / hub"), figures, Optional.empty());
        return new Machine(
                "invented",
                "",
                Figures.none(),
                Optional.empty(),
                Map.of("hub", motor),
                Map.of(),
                Map.of(),
                Map.of(),
                Bus.none());
    }
}
