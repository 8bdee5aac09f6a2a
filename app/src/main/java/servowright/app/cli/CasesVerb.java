package servowright.app.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.input.CaseFolder;
import servowright.app.view.CaseView;
import servowright.app.view.Sentence;
import servowright.engine.worksheet.CaseCheck;

/** {@code cases}: runs worked examples with known answers and says what differs. */
final class CasesVerb implements Verb {
    @Override
    public String name() {
        return "cases";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Works the cases of a folder or file and says which answers differ from those expected.",
                        "servowright cases cases")
                .addPositional(Spec.word(0, "DIR", "Folder or file of cases; without it the folder \"cases\"."))
                .addOption(Spec.flag("--all", "List the cases that agree as well."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        String typed = Spec.positional(asked, 0, "cases");
        CaseFolder folder;
        try {
            folder = CaseFolder.read(Path.of(typed));
        } catch (InvalidPathException e) {
            return ProblemText.show("\"" + Wrap.safe(typed) + "\" cannot be the name of a folder.", screen);
        }
        if (!folder.problems().isEmpty()) {
            return ProblemText.show(folder.problems(), screen);
        }
        List<CaseView> cases =
                folder.cases().stream().map(CaseCheck::of).map(CaseView::of).toList();
        boolean all = Spec.has(asked, "--all");
        cases.stream().filter(c -> all || !c.within()).forEach(c -> show(c, screen));
        long differ = cases.stream().filter(c -> !c.within()).count();
        screen.line(cases.size()
                + (cases.size() == 1 ? " case · " : " cases · ")
                + differ
                + (differ == 1 ? " differs" : " differ"));
        return differ == 0 ? ExitCode.FINE : ExitCode.FAILS;
    }

    private static void show(CaseView shown, Screen screen) {
        screen.wrapped(0, shown.name() + " · " + shown.sheet() + " · " + shown.place());
        for (CaseView.LineView line : shown.lines()) {
            String mark = line.within() ? "agrees " : screen.ink(Ink.RED, "differs");
            screen.line("  " + mark + "  " + line.what());
            screen.labelled(11, "expected", 21, Sentence.of(line.theirs()));
            screen.labelled(11, "found", 21, Sentence.of(line.ours()));
            if (!line.difference().isEmpty()) {
                screen.labelled(11, "apart", 21, Sentence.of(line.difference()));
            }
        }
        screen.labelled(2, "source", 11, Sentence.of(shown.kind() + ": " + shown.source()));
        screen.line();
    }
}
