package servowright.engine.worksheet;

import java.util.List;
import java.util.Optional;
import servowright.engine.worksheet.motor.MotorConstantsSheet;

/** Every worksheet there is. A new one is added here and nowhere else. */
public final class Worksheets {
    private static final List<Worksheet> ALL = List.of(new MotorConstantsSheet());

    private Worksheets() {}

    /** All worksheets in the order a person would need them. */
    public static List<Worksheet> all() {
        return ALL;
    }

    /** The worksheet of that name. */
    public static Optional<Worksheet> named(String name) {
        return ALL.stream().filter(w -> w.declaration().name().equals(name)).findFirst();
    }
}
