package servowright.app.dossier;

import java.util.List;
import servowright.app.view.Markup;
import servowright.app.view.PartView;

/** The machine as declared: every figure as it was written, with file and line. */
final class MachinePart {
    private MachinePart() {}

    static void write(List<PartView> parts, Markup page) {
        page.line().open("section", "id", "machine").leaf("h2", "Machine as declared");
        page.open("div", "class", "parts");
        for (PartView part : parts) {
            page.line().open("div", "class", "part");
            String name = part.name().isEmpty() ? "" : " " + part.name();
            page.leaf("h3", part.kind().words() + name);
            Text.rows(part.rows(), page);
            page.close();
        }
        page.close().close();
    }
}
