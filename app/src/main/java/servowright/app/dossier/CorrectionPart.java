package servowright.app.dossier;

import java.util.List;
import servowright.app.view.CorrectionView;
import servowright.app.view.Markup;

/** The correction of every angle sensor that was calibrated: harmonics, and a table with what it leaves. */
final class CorrectionPart {
    private static final int ENTRIES = 64;

    private CorrectionPart() {}

    static void write(List<CorrectionView> corrections, Markup page) {
        if (corrections.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "corrections").leaf("h2", "Angle corrections");
        for (CorrectionView correction : corrections) {
            page.line().leaf("h3", correction.axis()).leaf("p", correction.from(), "class", "from");
            table(page, List.of("harmonic", "amplitude", "phase of the sine"));
            correction.rows().forEach(r -> row(page, List.of(r.order(), r.amplitude(), r.phase())));
            page.close();
            table(page, List.of("entries of a table", "left, read at the nearest", "left, read between"));
            correction.residues().forEach(r -> row(page, List.of(r.entries(), r.nearest(), r.between())));
            page.close();
            page.open("details").leaf("summary", "Table of " + ENTRIES + " entries");
            table(page, List.of("reading, deg", "take off, deg"));
            correction.table(ENTRIES).forEach(r -> row(page, r));
            page.close().close();
        }
        page.close();
    }

    private static void table(Markup page, List<String> heads) {
        page.open("table").open("tr");
        heads.forEach(h -> page.leaf("th", h));
        page.close();
    }

    private static void row(Markup page, List<String> cells) {
        page.open("tr");
        cells.forEach(c -> page.leaf("td", c));
        page.close();
    }
}
