package servowright.app.dossier;

import java.util.List;
import servowright.app.view.Markup;
import servowright.app.view.PartView;
import servowright.app.view.Sentence;

/** Sentences and tables of the dossier. */
final class Text {
    private Text() {}

    /** A paragraph, unless it says nothing; figures are not broken over two lines. */
    static void paragraph(Sentence sentence, String style, Markup page) {
        if (sentence.isEmpty()) {
            return;
        }
        if (style.isEmpty()) {
            page.open("p");
        } else {
            page.open("p", "class", style);
        }
        inline(sentence, page);
        page.close();
    }

    static void inline(Sentence sentence, Markup page) {
        for (Sentence.Piece piece : sentence.pieces()) {
            if (piece.figure()) {
                page.leaf("span", piece.text(), "class", "figure");
            } else {
                page.text(piece.text());
            }
        }
    }

    /** Label, text as written, and place. */
    static void rows(List<PartView.Row> rows, Markup page) {
        if (rows.isEmpty()) {
            return;
        }
        page.open("table", "class", "stack").open("tbody");
        for (PartView.Row row : rows) {
            page.open("tr").leaf("th", row.label(), "scope", "row").leaf("td", row.text());
            page.leaf("td", row.place(), "class", "place soft").close();
        }
        page.close().close();
    }

    /** Head of a table. */
    static void head(Markup page, String... columns) {
        page.open("thead").open("tr");
        for (String column : columns) {
            page.leaf("th", column, "scope", "col");
        }
        page.close().close();
    }
}
