package servowright.app.cli;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.view.PlanJson;
import servowright.app.view.PlanView;
import servowright.app.view.View;
import servowright.engine.quantity.Spelling;

/** {@code plan}: what to measure, in a safe order, and what each reading should be. */
final class PlanVerb implements Verb {
    private final MachineSource source;

    PlanVerb(MachineSource source) {
        this.source = source;
    }

    @Override
    public String name() {
        return "plan";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Says what is worth measuring, in a safe order: hook-up, cautions, what each reading should be, and"
                                + " whether it was.",
                        "servowright plan examples/frost-cart",
                        "servowright plan examples/frost-cart --axis tilt")
                .addPositional(Spec.word(0, "DIR", "Folder with machine.yaml; without it the one you are in."))
                .addOption(Spec.option(
                        new String[] {"--axis"},
                        "NAME",
                        "The steps of one axis and its motor, or of one motor, with hook-up and cautions."))
                .addOption(Spec.flag("--json", "As JSON, described in docs/json.md."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        String folder = Spec.positional(asked, 0, "");
        return Folder.view(source, folder, screen, view -> {
            String axis = asked.matchedOptionValue("--axis", "");
            List<PlanView> plan = axis.isEmpty() ? view.plan() : PlanView.concerning(view.plan(), axis);
            if (plan.isEmpty() && !axis.isEmpty()) {
                return unknown(axis, view, screen);
            }
            if (Spec.has(asked, "--json")) {
                screen.out().print(PlanJson.of(view, plan));
            } else if (axis.isEmpty()) {
                PlanScreen.overview(view, folder, screen);
            } else {
                PlanScreen.steps(view, plan, screen);
            }
            return ExitCode.FINE;
        });
    }

    private static ExitCode unknown(String axis, View view, Screen screen) {
        List<String> names = PlanView.names(view.plan());
        String remedy = Spelling.nearest(axis, names)
                .map(n -> "Nearest: " + n + ".")
                .orElse(names.isEmpty() ? "The machine has none yet." : "Known: " + String.join(", ", names) + ".");
        return ProblemText.show("There is no axis or motor \"" + Wrap.safe(axis) + "\" with a plan. " + remedy, screen);
    }
}
