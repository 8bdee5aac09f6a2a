package servowright.app.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.input.WholeFile;
import servowright.app.view.AssessmentJson;
import servowright.app.view.FindingView;
import servowright.app.view.PartView;
import servowright.app.view.View;
import servowright.engine.findings.Finding;
import servowright.engine.quantity.Spelling;

/** {@code assess}: the findings of a machine, worst first. */
final class AssessVerb implements Verb {
    private final MachineSource source;

    AssessVerb(MachineSource source) {
        this.source = source;
    }

    @Override
    public String name() {
        return "assess";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Reads a machine's folder and says what fails, what is tight, what holds and what is not shown.",
                        "servowright assess examples/frost-cart",
                        "servowright assess examples/frost-cart --only \"left wheel\" --json")
                .addPositional(Spec.word(0, "DIR", "Folder with machine.yaml; without it the one you are in."))
                .addOption(Spec.option(
                        new String[] {"--only"},
                        "SUBJECT",
                        "Only findings about one part (a motor, an axis) or one subject: motor, fit, supply, heat, mount,"
                                + " bus, bench."))
                .addOption(Spec.flag("--all", "List what holds as well."))
                .addOption(Spec.flag("--json", "As JSON, described in docs/json.md."))
                .addOption(Spec.option(
                        new String[] {"--junit"}, "FILE", "Also write the findings as JUnit XML, for a build server."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        String folder = Spec.positional(asked, 0, "");
        return Folder.view(source, folder, screen, view -> shown(view, folder, asked, screen));
    }

    private static ExitCode shown(View whole, String folder, ParseResult asked, Screen screen) {
        View view = whole;
        if (asked.hasMatchedOption("--only")) {
            String only = asked.matchedOptionValue("--only", "");
            List<FindingView> some = whole.findings().stream()
                    .filter(f -> f.subject().equalsIgnoreCase(only) || f.area().equalsIgnoreCase(only))
                    .toList();
            if (some.isEmpty() && !known(whole).contains(only)) {
                return unknown(only, whole, screen);
            }
            view = whole.only(some);
        }
        if (asked.hasMatchedOption("--junit")) {
            Path file = Path.of(asked.matchedOptionValue("--junit", ""));
            try {
                WholeFile.text(file, JunitXml.of(view));
            } catch (IOException e) {
                return ProblemText.show(file + " could not be written: " + e.getMessage(), screen);
            }
        }
        if (Spec.has(asked, "--json")) {
            screen.out().print(AssessmentJson.of(view));
        } else {
            AssessScreen.show(view, Spec.has(asked, "--all"), folder, screen);
        }
        return view.counts().fails() > 0 ? ExitCode.FAILS : ExitCode.FINE;
    }

    private static List<String> known(View view) {
        Stream<String> areas = Stream.of(Finding.Area.values()).map(Finding.Area::words);
        Stream<String> parts = Stream.concat(
                view.parts().stream()
                        .filter(p -> p.kind() != PartView.Kind.DUTY)
                        .map(PartView::name),
                view.findings().stream().map(FindingView::subject));
        return Stream.concat(areas, parts).filter(n -> !n.isEmpty()).distinct().toList();
    }

    private static ExitCode unknown(String only, View view, Screen screen) {
        String remedy = Spelling.nearest(only, known(view))
                .map(n -> "Nearest: " + n + ".")
                .orElse("Known: " + String.join(", ", known(view)) + ".");
        return ProblemText.show("There is no part or subject \"" + only + "\". " + remedy, screen);
    }
}
