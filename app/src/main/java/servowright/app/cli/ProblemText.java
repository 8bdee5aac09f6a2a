package servowright.app.cli;

import java.io.PrintStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.known.Problem;

/** Says why input was not accepted: every problem, by file. */
final class ProblemText {
    private ProblemText() {}

    static ExitCode show(List<Problem> problems, Screen screen) {
        Map<String, List<Problem>> files = new LinkedHashMap<>();
        problems.forEach(p ->
                files.computeIfAbsent(p.place().file(), k -> new ArrayList<>()).add(p));
        PrintStream err = screen.err();
        files.forEach((file, some) -> {
            String count = some.size() == 1 ? "1 problem:" : some.size() + " problems:";
            err.println(screen.ink(Ink.BOLD, Wrap.safe(file) + " was not accepted, " + count));
            for (Problem problem : some) {
                List<String> lines = Wrap.lines(problem.text(), screen.width() - 4);
                for (int i = 0; i < lines.size(); i++) {
                    err.println((i == 0 ? "  " : "    ") + lines.get(i));
                }
            }
        });
        return ExitCode.REFUSED;
    }

    /** One line about what cannot be done as asked. */
    static ExitCode show(String what, Screen screen) {
        Wrap.lines(what, screen.width()).forEach(screen.err()::println);
        return ExitCode.REFUSED;
    }
}
