package servowright.app.dossier;

import java.util.List;
import java.util.Locale;
import servowright.app.view.FindingView;
import servowright.app.view.Markup;
import servowright.app.view.RailSvg;
import servowright.app.view.Sentence;
import servowright.engine.acceptance.Verdict;

/** One finding: verdict and name in the margin, what it says and its rail beside, the working to open. */
final class FindingPart {
    /** So many assumptions do not drown the finding. */
    private static final int FEW = 2;

    private FindingPart() {}

    /** Name of a verdict in the style sheet and in links. */
    static String name(Verdict verdict) {
        return verdict.words().replace(' ', '-');
    }

    static String heading(Verdict verdict) {
        return verdict.words().substring(0, 1).toUpperCase(Locale.ROOT)
                + verdict.words().substring(1);
    }

    static void write(FindingView finding, Markup page) {
        page.line().open("article", "class", "entry");
        page.open("div", "class", "margin");
        page.leaf("span", finding.verdict().words(), "class", "verdict " + name(finding.verdict()));
        page.leaf("strong", finding.subject());
        page.leaf("span", finding.id(), "class", "id");
        page.close().open("div");
        Text.paragraph(finding.statement(), "says", page);
        Text.paragraph(finding.reason(), "", page);
        Text.paragraph(finding.remedy(), "", page);
        finding.margin().ifPresent(m -> page.add(RailSvg.of(m)));
        finding.openNeeds().forEach(n -> Text.paragraph(Sentence.of("Would settle it: " + n.text()), "", page));
        assumed(finding.assumptions(), page);
        WorkingPart.write("Working", finding.working(), page);
        if (!finding.source().isEmpty()) {
            page.leaf("p", "Source: " + finding.source(), "class", "from");
        }
        page.close().close();
    }

    /** One or two are said; more are there to open, since the record lists them all once. */
    private static void assumed(List<Sentence> assumptions, Markup page) {
        if (assumptions.size() <= FEW) {
            assumptions.forEach(a -> Text.paragraph(Sentence.of("Assumed: ").then("", a), "soft", page));
            return;
        }
        page.open("details").leaf("summary", assumptions.size() + " assumptions");
        page.open("ul", "class", "soft");
        for (Sentence assumption : assumptions) {
            page.open("li");
            Text.inline(assumption, page);
            page.close();
        }
        page.close().close();
    }
}
