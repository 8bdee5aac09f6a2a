package servowright.app.input.tree;

import java.util.Optional;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import tools.jackson.core.JacksonException;

/** Says in plain words why a file is no YAML. */
final class YamlFault {
    private YamlFault() {}

    static Problem problem(String file, JacksonException e) {
        if (e.getCause() instanceof MarkedYamlEngineException marked) {
            return marked(file, marked);
        }
        int line = Optional.ofNullable(e.getLocation()).map(l -> l.getLineNr()).orElse(0);
        return new Problem(
                Problem.Kind.UNREADABLE,
                new Place(file, Math.max(0, line), ""),
                "",
                "what stands here cannot be read",
                "",
                "Check that this is a text file with key: value lines.");
    }

    private static Problem marked(String file, MarkedYamlEngineException e) {
        int line = line(e.getProblemMark());
        int opened = line(e.getContextMark());
        String problem = Optional.ofNullable(e.getProblem()).orElse("");
        Words words = words(problem, line, opened);
        return new Problem(
                Problem.Kind.UNREADABLE,
                new Place(file, words.atOpening() && opened > 0 ? opened : line, ""),
                "",
                words.statement(),
                "",
                words.remedy());
    }

    private static Words words(String problem, int line, int opened) {
        if (problem.startsWith("mapping values are not allowed")) {
            return new Words(
                    "a second colon stands here, or the indentation does not fit the line above",
                    "Indent like the neighbours, or put text with a colon in quotes.");
        }
        if (problem.startsWith("expected ',' or")) {
            return new Words(
                    opened == line || opened == 0
                            ? "a bracket or brace is not closed here"
                            : "the bracket or brace that opens in line " + opened + " is not closed before this line",
                    "Close it, put commas between its values, and put values that hold brackets or braces in quotes.");
        }
        if (problem.startsWith("could not find expected ':'")) {
            return new Words(
                    "a key stands here without its colon", "Write key: value, with a blank behind the colon.", true);
        }
        if (problem.startsWith("expected <block end>")) {
            return new Words(
                    "this line does not fit the lines above it",
                    "Indent it like its neighbours, and let each value stand alone behind its key.");
        }
        if (problem.contains("unexpected end of stream")) {
            return new Words("a quotation mark opens here and is never closed", "Close it.", true);
        }
        if (problem.contains("escape")) {
            return new Words("a backslash stands in double quotation marks", "Use single quotation marks.");
        }
        if (problem.contains("cannot start any token")) {
            String character = problem.replaceAll("(?s).*found character '(.).*", "$1");
            return new Words("no value begins with " + character, "Put the value in quotes.");
        }
        return new Words(
                "what stands here is no key with its value", "Check colons, quotes, brackets and indentation.");
    }

    private static int line(Optional<Mark> mark) {
        return mark.map(m -> m.getLine() + 1).orElse(0);
    }

    /**
     * What is wrong and what to do.
     *
     * @param atOpening whether the place to look at is where the broken part begins
     */
    private record Words(String statement, String remedy, boolean atOpening) {
        Words(String statement, String remedy) {
            this(statement, remedy, false);
        }
    }
}
