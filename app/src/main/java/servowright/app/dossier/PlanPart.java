package servowright.app.dossier;

import java.util.List;
import servowright.app.view.ExpectationView;
import servowright.app.view.Markup;
import servowright.app.view.NeedView;
import servowright.app.view.PlanView;
import servowright.app.view.PlanView.StepView;
import servowright.engine.procedure.Step.State;

/** The bench plan as a sheet to fill in by hand: what each reading should be, and beside it an empty box. */
final class PlanPart {
    private PlanPart() {}

    static void write(List<PlanView> plan, Markup page) {
        if (plan.isEmpty()) {
            return;
        }
        page.line().open("section", "id", "plan").leaf("h2", "Bench plan");
        page.leaf("p", PlanView.extent(plan) + ".");
        page.leaf(
                "p",
                "In the order of the numbers: cold before warm, by hand and drill before power. A window holds the reading"
                        + " with about 95 % if what is known is right; one outside says that it is not. Local codes and"
                        + " licensed practice decide what may be touched.",
                "class",
                "soft");
        for (PlanView part : plan) {
            page.line().leaf("h3", title(part));
            made(part.steps(State.AGREES), page);
            part.steps(State.DIFFERS, State.REFUSED, State.WORTH).forEach(s -> step(s, page));
            List<StepView> spare = part.steps(State.SPARE);
            if (!spare.isEmpty()) {
                page.leaf("p", "Can wait: " + PlanView.numbered(spare) + ".", "class", "soft");
            }
        }
        page.close();
    }

    private static String title(PlanView part) {
        String belongs = part.parts().isEmpty() ? "" : (part.motor() ? ", motor of " : ", axis of ");
        return part.name() + belongs + String.join(", ", part.parts());
    }

    private static void made(List<StepView> steps, Markup page) {
        if (steps.isEmpty()) {
            return;
        }
        page.open("table", "class", "stack made");
        Text.head(page, "Made, as expected", "Reading", "Expected", "Read");
        page.open("tbody");
        for (StepView step : steps) {
            for (ExpectationView one : step.telling()) {
                page.open("tr").leaf("th", step.number() + " " + step.kind(), "scope", "row");
                page.open("td").text(one.what());
                if (!one.at().isEmpty()) {
                    page.text(", ");
                    Text.inline(one.at(), page);
                }
                page.close();
                cell("expected ", one.window().isEmpty() ? "nothing known before" : one.window(), page);
                cell("read ", one.reading() + (one.verdict().isEmpty() ? "" : ", " + one.verdict()), page);
                page.close();
            }
        }
        page.close().close();
    }

    /** A cell that says what it is where the head of the table is out of sight. */
    private static void cell(String label, String text, Markup page) {
        page.open("td").leaf("span", label, "class", "narrow").text(text).close();
    }

    private static void step(StepView step, Markup page) {
        page.line().open("div", "class", "step");
        String rank = step.rank() > 0 ? ", narrows most (" + step.rank() + ")" : "";
        page.open("h4").text(step.number() + " " + step.kind()).open("span", "class", "soft");
        page.text(" · " + step.state().words() + rank).close().close();
        for (var caution : step.cautions()) {
            Text.paragraph(caution, "hazard", page);
        }
        for (var words : step.hookUp()) {
            Text.paragraph(words, "", page);
        }
        step.expectations().forEach(e -> reading(e, page));
        page.leaf("p", "Settles " + String.join(", ", step.settles()) + ".", "class", "soft");
        if (!step.stakes().isEmpty()) {
            page.leaf("p", "What hangs on it: " + String.join("; ", step.stakes()) + ".", "class", "soft");
        }
        page.close();
    }

    private static void reading(ExpectationView one, Markup page) {
        page.open("div", "class", "reading").open("p");
        page.text(one.what());
        if (!one.at().isEmpty()) {
            page.text(", ");
            Text.inline(one.at(), page);
        }
        page.close();
        page.open("p", "class", "expected");
        if (one.window().isEmpty()) {
            String lacks = one.needs().stream().map(NeedView::what).findFirst().orElse("a figure");
            page.text("expected: nothing yet, for want of the " + lacks);
        } else {
            page.text("expected ").leaf("strong", one.window(), "class", "figure");
            page.leaf("span", (one.drawn() ? ", by draws" : "") + from(one), "class", "soft");
        }
        page.close();
        if (!one.read().isEmpty()) {
            page.open("p").text("read " + one.reading() + " by " + one.test());
            page.leaf("strong", one.verdict().isEmpty() ? "" : ": " + one.verdict())
                    .close();
        }
        boxes(one.unit(), page);
        page.close();
    }

    private static String from(ExpectationView one) {
        return one.from().isEmpty() ? "" : "; from " + one.from();
    }

    private static void boxes(String unit, Markup page) {
        page.open("dl", "class", "boxes");
        box("reading", unit, page);
        box("date", "", page);
        box("instrument", "", page);
        box("name", "", page);
        page.close();
    }

    private static void box(String label, String unit, Markup page) {
        page.open("div", "class", "box " + label)
                .leaf("dt", label)
                .leaf("dd", unit)
                .close();
    }
}
