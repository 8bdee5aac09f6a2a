package servowright.app.cli;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.MissingParameterException;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;
import servowright.engine.quantity.Spelling;

/** Says in our words why a command was not understood. */
final class Refusal {
    private Refusal() {}

    static String of(ParameterException e, List<String> verbs) {
        CommandSpec spec = e.getCommandLine().getCommandSpec();
        boolean top = spec.parent() == null;
        if (e instanceof UnmatchedArgumentException unmatched) {
            String word = unmatched.getUnmatched().get(0);
            if (word.startsWith("-")) {
                List<String> options = spec.options().stream()
                        .flatMap(o -> List.of(o.names()).stream())
                        .toList();
                return "\"" + Wrap.safe(word) + "\" is not an option of " + spec.qualifiedName() + ". "
                        + hint(Spelling.nearest(word, options), spec);
            }
            return top
                    ? "There is no verb \"" + Wrap.safe(word) + "\". " + hint(Spelling.nearest(word, verbs), spec)
                    : "\"" + Wrap.safe(word) + "\" is one word too many. " + hint(Optional.empty(), spec);
        }
        if (e instanceof MissingParameterException missing
                && !missing.getMissing().isEmpty()) {
            String label = missing.getMissing().get(0).paramLabel();
            return "The value of " + label + " is missing. " + hint(Optional.empty(), spec);
        }
        return Wrap.safe(String.valueOf(e.getMessage())) + ". " + hint(Optional.empty(), spec);
    }

    private static String hint(Optional<String> nearest, CommandSpec spec) {
        return nearest.map(n -> "Did you mean " + n + "?")
                .orElse("`" + spec.qualifiedName() + " --help` shows what it takes.");
    }
}
