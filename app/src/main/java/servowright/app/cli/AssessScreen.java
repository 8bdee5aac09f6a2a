package servowright.app.cli;

import java.util.List;
import servowright.app.view.FindingView;
import servowright.app.view.NeedView;
import servowright.app.view.Sentence;
import servowright.app.view.View;
import servowright.engine.acceptance.Verdict;

/** The main screen: findings worst first, one idea a line. */
final class AssessScreen {
    /** Columns that a sentence needs beside subject and id; with fewer it goes below them. */
    private static final int SENTENCE = 40;

    private final View view;
    private final Screen screen;
    private final int subject;
    private final int id;

    private AssessScreen(View view, Screen screen) {
        this.view = view;
        this.screen = screen;
        this.subject = widest(view.findings().stream().map(FindingView::subject).toList());
        this.id = widest(view.findings().stream().map(FindingView::id).toList());
    }

    /**
     * Shows the findings.
     *
     * @param all    also those that hold
     * @param folder as it was typed, for the hint at the end; empty for the folder one is in
     */
    static void show(View view, boolean all, String folder, Screen screen) {
        new AssessScreen(view, screen).show(all, folder);
    }

    private void show(boolean all, String folder) {
        screen.wrapped(0, Sentence.of(view.name() + " · " + view.extent()));
        screen.line();
        counts();
        for (Verdict verdict : Verdict.values()) {
            List<FindingView> some = view.findings(verdict);
            if (some.isEmpty() || (verdict == Verdict.HOLDS && !all)) {
                continue;
            }
            screen.line();
            screen.line(screen.ink(Ink.of(verdict), heading(verdict)));
            some.forEach(this::finding);
        }
        screen.line();
        view.notes().forEach(n -> screen.wrapped(0, n));
        screen.wrapped(0, String.join(" ", view.cautions()));
        hints(all, folder);
    }

    private void counts() {
        for (String line : Wrap.lines(view.counts().text(), screen.width() - 2)) {
            screen.line("  " + (view.counts().fails() > 0 ? screen.ink(Ink.BOLD, line) : line));
        }
    }

    private static String heading(Verdict verdict) {
        String words = verdict.words();
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }

    private void finding(FindingView finding) {
        int column = 2 + subject + 2 + id + 2;
        boolean beside = screen.width() - column >= SENTENCE;
        String head = pad(finding.subject(), subject) + "  " + finding.id();
        if (beside) {
            screen.labelled(2, head, column, finding.statement());
        } else {
            column = 4;
            screen.line("  " + Wrap.safe(finding.subject()) + " · " + finding.id());
            screen.wrapped(column, finding.statement());
        }
        screen.wrapped(column, finding.reason());
        screen.wrapped(column, finding.remedy());
        for (NeedView need : finding.openNeeds()) {
            screen.wrapped(column, need.text());
        }
    }

    private void hints(boolean all, String folder) {
        String where = folder.isEmpty() ? "" : " " + quoted(folder);
        if (!all && view.counts().holds() > 0) {
            screen.wrapped(0, "`servowright assess" + where + " --all` lists what holds as well.");
        }
        if (!view.findings().isEmpty()) {
            String key = view.findings().get(0).key();
            screen.wrapped(0, "`servowright explain " + quoted(key) + where + "` shows the working.");
        }
    }

    private static String quoted(String text) {
        return text.matches("[\\w./-]+") ? text : "\"" + text + "\"";
    }

    private static String pad(String text, int width) {
        String safe = Wrap.safe(text);
        return safe.length() >= width ? safe : safe + " ".repeat(width - safe.length());
    }

    private static int widest(List<String> texts) {
        return texts.stream().mapToInt(String::length).max().orElse(0);
    }
}
