package servowright.engine.worksheet.encoder;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.worksheet.Worksheet;

/** The worksheets of magnet, mount and encoder in the order a person would need them. */
public final class EncoderSheets {
    private static final List<Worksheet> ALL = Stream.of(
                    MagnetSheets.all(),
                    MountSheets.all(),
                    StackSheets.all(),
                    ChainSheets.all(),
                    StartSheets.all(),
                    CostSheets.all())
            .flatMap(List::stream)
            .toList();

    private EncoderSheets() {}

    public static List<Worksheet> all() {
        return ALL;
    }
}
