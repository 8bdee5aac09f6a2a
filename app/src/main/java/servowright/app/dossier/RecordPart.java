package servowright.app.dossier;

import servowright.app.view.Markup;
import servowright.app.view.View;

/** What the record rests on: assumptions, files with their hashes, and how to write it again. */
final class RecordPart {
    private RecordPart() {}

    static void write(View view, Markup page) {
        page.line().open("section", "id", "record").leaf("h2", "Record");
        if (!view.assumed().isEmpty()) {
            page.leaf("h3", "Taken without being known").open("ul");
            view.assumed().forEach(a -> page.leaf("li", a));
            page.close();
        }
        view.notes().forEach(n -> page.leaf("p", n));
        page.leaf("h3", "Files");
        page.open("table", "class", "stack");
        Text.head(page, "File", "SHA-256");
        page.open("tbody");
        for (View.FileView file : view.files()) {
            page.open("tr").leaf("th", file.name(), "scope", "row");
            page.leaf("td", file.sha256(), "class", "hash").close();
        }
        page.close().close();
        page.leaf("h3", "Writing it again");
        page.leaf(
                "p",
                "With servowright " + view.version() + " and the files above, the same command writes the same bytes:");
        page.leaf("p", "servowright dossier FOLDER -o dossier.html", "class", "command");
        page.close();
    }
}
