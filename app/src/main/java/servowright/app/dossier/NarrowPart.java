package servowright.app.dossier;

import java.util.List;
import servowright.app.view.Markup;
import servowright.app.view.NarrowView;

/** Whose uncertainty weighs most in what is predicted, and what would narrow it. */
final class NarrowPart {
    private NarrowPart() {}

    static void write(List<NarrowView> narrowing, Markup page) {
        if (narrowing.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "narrowing").leaf("h2", "What would narrow the predictions");
        page.leaf(
                "p",
                "The parameter with the largest share of the uncertainty of a judged figure first. Marked with ▸: a"
                        + " narrower figure could change the verdict; the others change digits only.",
                "class",
                "soft");
        page.open("table", "class", "stack");
        Text.head(page, "Parameter", "Share of the uncertainty of", "What would narrow it");
        page.open("tbody");
        for (NarrowView one : narrowing) {
            page.open("tr")
                    .leaf("th", (one.matters() ? "▸ " : "") + one.parameter() + " of " + one.motor(), "scope", "row");
            page.leaf("td", one.share() + " " + one.key())
                    .leaf("td", one.settle())
                    .close();
        }
        page.close().close().close();
    }
}
