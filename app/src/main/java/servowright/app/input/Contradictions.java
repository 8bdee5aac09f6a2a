package servowright.app.input;

import java.util.Map;
import java.util.Optional;
import servowright.app.input.form.RecordingFields;
import servowright.app.input.form.Value.Part;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Problem;
import servowright.engine.machine.Declared;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.Key;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SupplyKind;
import servowright.engine.machine.SurroundingsFigure;
import servowright.engine.quantity.Stated;

/**
 * Pairs of figures that cannot both be right whatever the machine is. Whether a machine is a good one, and whether a
 * label tells the truth, is not judged here.
 */
final class Contradictions {
    private final Problems problems;

    Contradictions(Problems problems) {
        this.problems = problems;
    }

    /** Looks through machine.yaml. */
    void machine(Part file) {
        Part surroundings = file.part("surroundings");
        rising(surroundings, SurroundingsFigure.COLDEST, SurroundingsFigure.WARMEST);
        file.part("motors").parts().values().forEach(this::motor);
        file.part("drives").parts().values().forEach(this::drive);
        supply(file.part("supply"));
    }

    /** Looks through bench.yaml. */
    void bench(Part file) {
        file.series("tests").forEach(t -> rising(t, RecordingFields.FROM, RecordingFields.TO));
    }

    private void motor(Part motor) {
        rising(motor, MotorFigure.RATED_CURRENT, MotorFigure.PEAK_CURRENT);
        find(motor, MotorFigure.MAGNETS)
                .filter(d -> Math.abs(d.si() % 2) == 1)
                .ifPresent(d -> add(d, shown(d) + " magnets cannot be: poles come in pairs", "Count them again."));
    }

    private void drive(Part drive) {
        rising(drive, DriveFigure.CONTINUOUS_CURRENT, DriveFigure.PEAK_CURRENT);
        rising(drive, DriveFigure.VOLTAGE, DriveFigure.TRIP_VOLTAGE);
    }

    private void supply(Part supply) {
        Map<String, Part> sources = supply.parts();
        Part battery = sources.get(SupplyKind.BATTERY.words());
        Part mains = sources.get(SupplyKind.MAINS.words());
        if (battery != null && mains != null) {
            Part later = battery.place().line() > mains.place().line() ? battery : mains;
            problems.add(
                    Problem.Kind.CONTRADICTION,
                    later.place(),
                    "battery and mains",
                    "a supply is a battery or a mains supply, not both",
                    "one of them",
                    "Keep the one that feeds the axes.");
        }
    }

    /** {@code low} must not lie above {@code high}, when both are given on the same basis. */
    private <K extends Enum<K> & Key.Named> void rising(Part part, K low, K high) {
        Optional<Declared> lower = find(part, low);
        Optional<Declared> upper = find(part, high);
        if (lower.isEmpty() || upper.isEmpty()) {
            return;
        }
        Stated below = lower.get().stated();
        Stated above = upper.get().stated();
        boolean comparable = below.currentBasis().equals(above.currentBasis());
        if (comparable && above.upper().si() < below.upper().si()) {
            add(
                    upper.get(),
                    shown(upper.get()) + " is below the " + shown(lower.get()) + " of " + name(low) + " in line "
                            + lower.get().place().line(),
                    "Check both figures.");
        }
    }

    private static <K extends Enum<K> & Key.Named> Optional<Declared> find(Part part, K key) {
        return part.figure(key.key().path());
    }

    private static String name(Key.Named named) {
        return named.key().path().replace(".", " / ");
    }

    private static String shown(Declared d) {
        return Problems.shortened(d.stated().text().replaceFirst("\\s*\\[.*", ""));
    }

    private void add(Declared at, String statement, String remedy) {
        problems.add(Problem.Kind.CONTRADICTION, at.place(), at.stated().text(), statement, "", remedy);
    }
}
