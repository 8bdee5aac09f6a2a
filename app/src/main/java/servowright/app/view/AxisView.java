package servowright.app.view;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.machine.Axis;

/**
 * An axis and the parts that make it.
 *
 * @param motor  names of its parts; empty where none is stated
 * @param duties names of what it must do
 */
public record AxisView(
        String name, Optional<String> motor, Optional<String> drive, Optional<String> sensor, List<String> duties) {
    public AxisView {
        duties = List.copyOf(duties);
    }

    static AxisView of(Axis axis) {
        return new AxisView(
                axis.name(),
                axis.motor(),
                axis.drive(),
                axis.sensor(),
                List.copyOf(axis.duties().keySet()));
    }

    /** Whether a part or a finding's subject is this axis or belongs to it. */
    public boolean concerns(String subject) {
        return subject.equals(name)
                || subject.startsWith(name + ", ")
                || Stream.of(motor, drive, sensor).flatMap(Optional::stream).anyMatch(subject::equals);
    }
}
