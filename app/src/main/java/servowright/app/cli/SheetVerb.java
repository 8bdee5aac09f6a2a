package servowright.app.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.view.SheetView;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Spelling;
import servowright.engine.worksheet.Filled;
import servowright.engine.worksheet.Worksheet;
import servowright.engine.worksheet.Worksheets;

/** {@code sheet}: works one calculation from typed inputs. */
final class SheetVerb implements Verb {
    private static final String HELP = "--help";

    private final String version;

    SheetVerb(String version) {
        this.version = version;
    }

    @Override
    public String name() {
        return "sheet";
    }

    @Override
    public CommandSpec spec() {
        return Spec.withoutHelp(
                        name(),
                        "Works one calculation. sheet --list names them all, sheet NAME --help shows what one takes and"
                                + " gives.",
                        "servowright sheet motor-constants speed_constant=\"150 rpm/V [line peak]\"",
                        "servowright sheet motor-constants speed_constant=\"150 rpm/V\" --working")
                .addPositional(Spec.word(0, "NAME", "Name of the worksheet."))
                .addPositional(PositionalParamSpec.builder()
                        .index("1..*")
                        .arity("0..*")
                        .type(List.class)
                        .auxiliaryTypes(String.class)
                        .paramLabel("INPUT=VALUE")
                        .description("An input and what it is, in quotes where it holds blanks.")
                        .build())
                .addOption(Spec.flag("--list", "Name every worksheet."))
                .addOption(Spec.flag("--working", "Show the working line by line."))
                .addOption(Spec.flag("--json", "As JSON, described in docs/json.md."))
                .addOption(Spec.flag(HELP, "Show this help, or with a name what that worksheet takes and gives."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        String name = Spec.positional(asked, 0, "");
        if (name.isEmpty()) {
            if (Spec.has(asked, HELP) || !Spec.has(asked, "--list")) {
                asked.commandSpec().commandLine().usage(screen.out());
                return Spec.has(asked, HELP) ? ExitCode.FINE : ExitCode.REFUSED;
            }
            SheetScreen.list(Worksheets.all(), screen);
            return ExitCode.FINE;
        }
        Optional<Worksheet> sheet = Worksheets.named(name);
        if (sheet.isEmpty()) {
            List<String> names =
                    Worksheets.all().stream().map(w -> w.declaration().name()).toList();
            String remedy = Spelling.nearest(name, names)
                    .map(n -> "Nearest: " + n + ".")
                    .orElse("`servowright sheet --list` names all of them.");
            return ProblemText.show("There is no worksheet \"" + Wrap.safe(name) + "\". " + remedy, screen);
        }
        if (Spec.has(asked, HELP)) {
            SheetScreen.help(sheet.get().declaration(), screen);
            return ExitCode.FINE;
        }
        List<String> typed = asked.matchedPositionals().stream()
                .filter(p -> p.index().min() == 1)
                .flatMap(p -> p.originalStringValues().stream())
                .toList();
        return work(sheet.get(), typed, asked, screen);
    }

    private ExitCode work(Worksheet sheet, List<String> typed, ParseResult asked, Screen screen) {
        Map<String, List<String>> given = new LinkedHashMap<>();
        List<Problem> problems = new ArrayList<>();
        for (String pair : typed) {
            int equals = pair.indexOf('=');
            if (equals <= 0) {
                problems.add(noValue(sheet, pair));
            } else {
                given.computeIfAbsent(pair.substring(0, equals).strip(), k -> new ArrayList<>())
                        .add(pair.substring(equals + 1));
            }
        }
        Filled filled = Filled.of(sheet, given);
        if (filled instanceof Filled.Refused refused) {
            problems.addAll(refused.problems());
        }
        if (!problems.isEmpty()) {
            return ProblemText.show(problems, screen);
        }
        SheetView view = SheetView.of(sheet.declaration(), sheet.compute(((Filled.Ready) filled).inputs()));
        if (!Spec.has(asked, "--json")) {
            return SheetScreen.show(view, Spec.has(asked, "--working"), screen);
        }
        screen.out().print(view.json(version));
        return view.needs().isEmpty() ? ExitCode.FINE : ExitCode.REFUSED;
    }

    private static Problem noValue(Worksheet sheet, String word) {
        return new Problem(
                Problem.Kind.NOT_A_QUANTITY,
                new Place(sheet.declaration().name(), 0, ""),
                word,
                "\"" + word + "\" is no input with a value",
                "",
                "Write it like input=value, in quotes where the value holds blanks.");
    }
}
