package servowright.app.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.view.FindingView;
import servowright.app.view.View;
import servowright.engine.quantity.Spelling;

/** {@code explain}: everything behind one finding. */
final class ExplainVerb implements Verb {
    private final MachineSource source;

    ExplainVerb(MachineSource source) {
        this.source = source;
    }

    @Override
    public String name() {
        return "explain";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Shows the working of a finding: formula, figures put in, where each comes from, source.",
                        "servowright explain lift/speed-reach examples/frost-cart")
                .addPositional(
                        Spec.word(0, "KEY", "Part and finding, as assess names them; without it all are listed."))
                .addPositional(Spec.word(1, "DIR", "Folder with machine.yaml; without it the one you are in."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        String key = Spec.positional(asked, 0, "");
        String folder = Spec.positional(asked, 1, "");
        return Folder.view(source, folder, screen, view -> key.isEmpty() ? list(view, screen) : one(key, view, screen));
    }

    private static ExitCode list(View view, Screen screen) {
        for (FindingView finding : view.findings()) {
            screen.line(screen.ink(
                            Ink.of(finding.verdict()),
                            String.format(
                                    Locale.ROOT, "%-10s", finding.verdict().words()))
                    + Wrap.safe(finding.key()));
        }
        return ExitCode.FINE;
    }

    private static ExitCode one(String key, View view, Screen screen) {
        List<String> keys = view.findings().stream().map(FindingView::key).toList();
        List<FindingView> found = view.findings().stream()
                .filter(f -> f.key().equalsIgnoreCase(key) || f.id().equalsIgnoreCase(key))
                .toList();
        if (found.isEmpty()) {
            Optional<String> nearest = Spelling.nearest(key, keys);
            String remedy = nearest.map(n -> "Nearest: " + n + ".")
                    .orElse("`servowright explain` without a key lists all of them.");
            return ProblemText.show("There is no finding \"" + Wrap.safe(key) + "\". " + remedy, screen);
        }
        for (int i = 0; i < found.size(); i++) {
            if (i > 0) {
                screen.line();
            }
            ExplainScreen.show(found.get(i), screen);
        }
        return ExitCode.FINE;
    }
}
