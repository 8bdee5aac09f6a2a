package servowright.app.page.bus;

import java.util.List;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/** The worksheets about the network. */
public final class BusSheets {
    private BusSheets() {}

    public static List<Declaration> all() {
        return Worksheets.all().stream()
                .filter(w -> w.getClass().getPackageName().endsWith(".bus"))
                .map(Worksheet::declaration)
                .toList();
    }
}
