package servowright.app.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.view.AssessmentJson;

/** {@code bench}: what the bench knows of each motor. */
final class BenchVerb implements Verb {
    private final MachineSource source;

    BenchVerb(MachineSource source) {
        this.source = source;
    }

    @Override
    public String name() {
        return "bench";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Says what is known of each motor: values, uncertainty, origin, contradictions, and what would"
                                + " narrow them.",
                        "servowright bench examples/frost-cart",
                        "servowright bench examples/frost-cart --working",
                        "servowright bench examples/frost-cart --correction \"left wheel\" --entries 256 > table.csv")
                .addPositional(Spec.word(0, "DIR", "Folder with machine.yaml; without it the one you are in."))
                .addOption(
                        Spec.flag("--working", "Every test, every candidate, and where each uncertainty comes from."))
                .addOption(Spec.flag("--json", "As JSON, described in docs/json.md."))
                .addOption(Spec.option(
                        new String[] {"--correction"},
                        "AXIS",
                        "What to take off the reading of the angle sensor of that axis, as comma-separated values:"
                                + " its harmonics."))
                .addOption(Spec.option(
                        new String[] {"--entries"},
                        "N",
                        "With --correction: a table of that many evenly spaced readings instead of harmonics."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        return Folder.view(source, Spec.positional(asked, 0, ""), screen, view -> {
            String axis = asked.matchedOptionValue("--correction", "");
            if (!axis.isEmpty()) {
                return CorrectionText.show(view, axis, asked.matchedOptionValue("--entries", ""), screen);
            }
            if (Spec.has(asked, "--json")) {
                screen.out().print(AssessmentJson.of(view));
            } else if (Spec.has(asked, "--working")) {
                BenchScreen.show(view, screen);
            } else {
                BenchOverview.show(view, screen);
            }
            return ExitCode.FINE;
        });
    }
}
