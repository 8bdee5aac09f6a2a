package servowright.engine.prediction;

import java.util.Optional;
import java.util.function.Supplier;
import servowright.engine.known.Outcome;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Drive;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Machine;
import servowright.engine.machine.SupplyFigure;

/** Does a drive take the supply over its whole range? */
public final class SupplyWindowStudy {
    private SupplyWindowStudy() {}

    /** The window of one drive. */
    public static Outcome<SupplyWindow> of(Machine machine, Drive drive) {
        Inquiry in = new Inquiry();
        Supplier<Declared> supply = in.take(supplyVoltage(machine));
        Supplier<Declared> window = in.take(Wanted.declared(drive.figures(), DriveFigure.VOLTAGE, drive.name()));
        Optional<Declared> trip = drive.figures().get(DriveFigure.TRIP_VOLTAGE);
        return in.answer(() -> new SupplyWindow(
                Wanted.least(supply.get()),
                Wanted.most(supply.get()),
                Wanted.least(window.get()),
                Wanted.most(window.get()),
                trip.map(Declared::known)));
    }

    private static Outcome<Declared> supplyVoltage(Machine machine) {
        return machine.supply()
                .map(s -> Wanted.declared(s.figures(), SupplyFigure.VOLTAGE, "the supply"))
                .orElseGet(() -> Outcome.missing("the supply", "describe it in machine.yaml, supply"));
    }
}
