package servowright.app.dossier;

import java.util.List;
import servowright.app.view.Markup;
import servowright.app.view.Plot;
import servowright.app.view.PlotSvg;
import servowright.app.view.TestView;

/** Each bench test: hook-up and conditions, what it gave, what was found in it, and its plots. */
final class TestPart {
    private TestPart() {}

    static void write(List<TestView> tests, Markup page) {
        page.line().open("section", "id", "tests").leaf("h2", "Bench tests");
        if (tests.isEmpty()) {
            page.leaf("p", "None yet.");
        }
        for (TestView test : tests) {
            page.line().leaf("h3", test.id());
            page.leaf("p", test.kind() + " of " + test.motor() + ", " + test.place(), "class", "from");
            values(test, page);
            test.details().forEach(d -> Text.paragraph(d, "", page));
            if (!test.remarks().isEmpty()) {
                page.open("ul");
                test.remarks().forEach(r -> {
                    page.open("li");
                    Text.inline(r, page);
                    page.close();
                });
                page.close();
            }
            plots(test, page);
            page.open("details").leaf("summary", "Hook-up and conditions");
            Text.rows(test.conditions(), page);
            page.close();
        }
        page.close();
    }

    private static void values(TestView test, Markup page) {
        for (TestView.ValueView value : test.values()) {
            value.value()
                    .ifPresentOrElse(
                            v -> {
                                page.open("p").text(value.words() + " ");
                                page.leaf("span", v.figure().text(), "class", "figure")
                                        .close();
                                WorkingPart.write("Working of the " + value.words(), v.working(), page);
                            },
                            () -> value.needs()
                                    .forEach(n -> page.leaf("p", value.words() + " not found; " + n.text())));
        }
    }

    private static void plots(TestView test, Markup page) {
        if (test.plots().isEmpty()) {
            return;
        }
        page.open("div", "class", "plots");
        for (Plot plot : test.plots()) {
            page.open("figure")
                    .add(PlotSvg.of(plot))
                    .leaf("figcaption", plot.description())
                    .close();
        }
        page.close();
    }
}
