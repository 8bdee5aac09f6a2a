package servowright.app.cli;

import servowright.app.view.FindingView;
import servowright.app.view.NeedView;
import servowright.app.view.Sentence;

/** One finding with everything behind it. */
final class ExplainScreen {
    private static final int COLUMN = 14;

    private ExplainScreen() {}

    static void show(FindingView finding, Screen screen) {
        String verdict = screen.ink(Ink.of(finding.verdict()), finding.verdict().words());
        screen.line(Wrap.safe(finding.subject()) + " · " + finding.id() + " · " + verdict);
        screen.line();
        screen.wrapped(2, finding.statement());
        screen.wrapped(2, finding.reason());
        screen.wrapped(2, finding.remedy());
        finding.margin().ifPresent(m -> {
            screen.line();
            screen.labelled(2, "figure", COLUMN, Sentence.of(m.value().text()));
            screen.labelled(2, "limit", COLUMN, Sentence.of(m.limitText()));
        });
        if (!finding.openNeeds().isEmpty()) {
            screen.line();
        }
        for (NeedView need : finding.openNeeds()) {
            screen.labelled(2, "would settle", COLUMN + 2, Sentence.of(need.text()));
        }
        if (!finding.working().isEmpty()) {
            screen.line();
            WorkingScreen.show(finding.working(), screen);
        }
        if (!finding.assumptions().isEmpty()) {
            screen.line();
            finding.assumptions().forEach(a -> screen.labelled(2, "assumed", COLUMN, a));
        }
        if (!finding.source().isEmpty()) {
            screen.line();
            screen.labelled(2, "source", COLUMN, Sentence.of(finding.source()));
        }
    }
}
