package servowright.app.cli;

import java.util.function.Function;
import picocli.AutoComplete;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code completion}: what a shell needs to complete verbs and options. */
final class CompletionVerb implements Verb {
    private final Function<Screen, CommandLine> line;

    /** For the verbs of this line. */
    CompletionVerb(Function<Screen, CommandLine> line) {
        this.line = line;
    }

    @Override
    public String name() {
        return "completion";
    }

    @Override
    public CommandSpec spec() {
        return Spec.verb(
                name(),
                "Prints a script with which bash and zsh complete verbs and options.",
                "source <(servowright completion)");
    }

    @Override
    public ExitCode run(ParseResult asked, Screen screen) {
        screen.out().print(AutoComplete.bash("servowright", line.apply(screen)));
        return ExitCode.FINE;
    }
}
