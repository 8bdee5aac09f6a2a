package servowright.app.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;
import servowright.app.input.WholeFile;
import servowright.app.view.View;

/** {@code dossier}: the written record as one HTML file. */
final class DossierVerb implements Verb {
    private final MachineSource source;
    private final Function<View, String> dossier;

    DossierVerb(MachineSource source, Function<View, String> dossier) {
        this.source = source;
        this.dossier = dossier;
    }

    @Override
    public String name() {
        return "dossier";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                        name(),
                        "Writes the record of a machine as one HTML file: findings, figures with their working, tests,"
                                + " plots, files with their hashes.",
                        "servowright dossier examples/frost-cart -o frost-cart.html",
                        "servowright dossier examples/frost-cart --drill \"left wheel\" > left-wheel.svg")
                .addPositional(Spec.word(0, "DIR", "Folder with machine.yaml; without it the one you are in."))
                .addOption(Spec.option(
                        new String[] {"--drill"}, "AXIS", "Instead: the drill template of that axis, 1:1, as SVG."))
                .addOption(Spec.option(
                        new String[] {"-o", "--output"}, "FILE", "File to write; without it dossier.html."));
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        Path file = Path.of(asked.matchedOptionValue("--output", "dossier.html"));
        return Folder.view(source, Spec.positional(asked, 0, ""), screen, view -> {
            String axis = asked.matchedOptionValue("--drill", "");
            if (!axis.isEmpty()) {
                return DrillText.show(view, axis, screen);
            }
            try {
                WholeFile.text(file, dossier.apply(view));
            } catch (IOException e) {
                return ProblemText.show(file + " could not be written: " + e.getMessage(), screen);
            }
            screen.line(file + " written: " + view.counts().text());
            return view.counts().fails() > 0 ? ExitCode.FAILS : ExitCode.FINE;
        });
    }
}
