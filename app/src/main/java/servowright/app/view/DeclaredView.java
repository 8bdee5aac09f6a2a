package servowright.app.view;

import java.util.List;
import servowright.engine.machine.Machine;

/** A machine as it is declared, before anything is computed. */
public record DeclaredView(String name, String about, List<PartView> parts) {
    public DeclaredView {
        parts = List.copyOf(parts);
    }

    public static DeclaredView of(Machine machine) {
        return new DeclaredView(machine.name(), machine.about(), MachineParts.of(machine));
    }
}
