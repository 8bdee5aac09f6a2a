package servowright.app.dossier;

import java.util.List;
import servowright.app.view.FindingView;
import servowright.app.view.Markup;
import servowright.app.view.View;
import servowright.engine.acceptance.Verdict;

/**
 * The record of a machine as one HTML file that needs nothing else: no script, no picture, no font from elsewhere. The
 * same view gives the same bytes, so it carries no date.
 */
public final class Dossier {
    private final View view;
    private final Markup page = new Markup();

    private Dossier(View view) {
        this.view = view;
    }

    public static String html(View view) {
        return new Dossier(view).write();
    }

    private String write() {
        page.own("<!DOCTYPE html>\n");
        page.open("html", "xmlns", "http://www.w3.org/1999/xhtml", "lang", "en");
        head();
        page.line().open("body").line();
        title();
        contents();
        cautions();
        page.open("main");
        findings();
        MotorPart.write(view.motors(), page);
        NarrowPart.write(view.narrowing(), page);
        PlanPart.write(view.plan(), page);
        TestPart.write(view.tests(), page);
        CorrectionPart.write(view.corrections(), page);
        CapturePart.write(view.captures(), page);
        MountPart.write(view.mounts(), view.drills(), page);
        MachinePart.write(view.parts(), page);
        RecordPart.write(view, page);
        return page.close().line().close().line().close().line().end();
    }

    private void head() {
        page.line().open("head").line();
        page.empty("meta", "charset", "utf-8").line();
        page.empty("meta", "name", "viewport", "content", "width=device-width, initial-scale=1")
                .line();
        page.empty(
                        "meta",
                        "http-equiv",
                        "Content-Security-Policy",
                        "content",
                        "default-src 'none'; style-src 'unsafe-inline'")
                .line();
        page.empty("meta", "name", "generator", "content", "servowright " + view.version())
                .line();
        page.leaf("title", view.name() + ", dossier").line();
        page.open("style").line().own(Style.of(view.name())).close().line();
        page.close();
    }

    private void title() {
        page.open("div", "class", "sheet").open("header");
        page.leaf("h1", view.name());
        if (!view.about().isEmpty()) {
            page.leaf("p", view.about(), "class", "soft");
        }
        page.close().open("dl");
        cell("Consists of", view.extent());
        for (Verdict verdict : Verdict.values()) {
            page.open("div").leaf("dt", FindingPart.heading(verdict)).open("dd");
            page.leaf(
                    "span",
                    String.valueOf(view.findings(verdict).size()),
                    "class",
                    "verdict " + FindingPart.name(verdict));
            page.close().close();
        }
        cell("Written by", "servowright " + view.version());
        page.close().close().line();
    }

    private void cell(String what, String text) {
        page.open("div").leaf("dt", what).leaf("dd", text).close();
    }

    private void contents() {
        page.open("nav", "aria-label", "Contents").open("ul");
        for (Verdict verdict : Verdict.values()) {
            if (!view.findings(verdict).isEmpty()) {
                entry(FindingPart.name(verdict), FindingPart.heading(verdict));
            }
        }
        entry("motors", "Motors");
        if (!view.narrowing().isEmpty()) {
            entry("narrowing", "What would narrow");
        }
        if (!view.plan().isEmpty()) {
            entry("plan", "Bench plan");
        }
        entry("tests", "Bench tests");
        if (!view.captures().isEmpty()) {
            entry("captures", "Captures of the bus");
        }
        entry("machine", "Machine as declared");
        entry("record", "Record");
        page.close().close().line();
    }

    private void entry(String id, String text) {
        page.open("li").leaf("a", text, "href", "#" + id).close();
    }

    private void cautions() {
        page.open("div", "class", "caution", "role", "note");
        view.cautions().forEach(c -> page.leaf("p", c));
        page.close().line();
    }

    private void findings() {
        for (Verdict verdict : Verdict.values()) {
            List<FindingView> some = view.findings(verdict);
            if (some.isEmpty()) {
                continue;
            }
            page.line().open("section", "id", FindingPart.name(verdict));
            page.leaf("h2", FindingPart.heading(verdict));
            some.forEach(f -> FindingPart.write(f, page));
            page.close();
        }
    }
}
