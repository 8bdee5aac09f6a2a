package servowright.app.dossier;

import java.util.List;
import servowright.app.view.Markup;
import servowright.app.view.WorkingText;

/** A working to open on the screen; printed it stands open. */
final class WorkingPart {
    private WorkingPart() {}

    static void write(String summary, List<WorkingText> working, Markup page) {
        if (working.isEmpty()) {
            return;
        }
        page.open("details").leaf("summary", summary).open("ol", "class", "working");
        for (int i = 0; i < working.size(); i++) {
            WorkingText line = working.get(i);
            boolean last = i + 1 == working.size();
            line(line, last || !working.get(i + 1).source().equals(line.source()), page);
        }
        page.close().close();
    }

    /** A source that several lines share is named once, after the last. */
    private static void line(WorkingText line, boolean withSource, Markup page) {
        page.open("li").leaf("div", line.label(), "class", "label");
        String result = line.result().text();
        if (line.terms().isEmpty()) {
            String symbol = line.symbol().isEmpty() ? "" : line.symbol() + " = ";
            String given = line.formula().contains("=") ? line.formula() + " = " : symbol;
            page.leaf("div", given + result, "class", "formula");
            page.leaf("div", line.from(), "class", "with");
        } else {
            page.leaf("div", line.formula(), "class", "formula");
            String numbers = line.numbers().equals(result) ? "" : "= " + line.numbers() + " ";
            page.leaf("div", numbers + "= " + result, "class", "formula");
        }
        for (WorkingText.TermText term : line.terms()) {
            page.leaf("div", term.symbol() + " = " + term.figure().text() + ", " + term.from(), "class", "with");
        }
        if (withSource && !line.source().isEmpty() && !line.from().endsWith(line.source())) {
            page.leaf("div", "Source: " + line.source(), "class", "with");
        }
        page.close();
    }
}
