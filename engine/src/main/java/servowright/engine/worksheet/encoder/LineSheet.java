package servowright.engine.worksheet.encoder;

import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Contradictions;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/**
 * A worksheet of independent lines: each result is computed whose inputs are there.
 *
 * @param limits what inputs may not be together
 */
record LineSheet(Declaration declaration, List<Line> lines, List<Limit> limits) implements Worksheet {

    /**
     * What inputs may not be together, where the formula does not hold.
     *
     * @param broken whether they are
     * @param input  the one to change
     */
    record Limit(Predicate<Inputs> broken, String input, String statement, String remedy) {}

    static LineSheet of(
            String name, String title, String about, List<Input> inputs, List<Result> results, List<Line> lines) {
        List<String> sources = lines.stream().map(Line::source).distinct().toList();
        return new LineSheet(new Declaration(name, title, about, inputs, results, sources), lines, List.of());
    }

    /** The same with a limit on what inputs may be together. */
    LineSheet within(Limit limit) {
        return new LineSheet(declaration, lines, List.of(limit));
    }

    @Override
    public List<Problem> contradictions(Inputs inputs) {
        Contradictions found = new Contradictions(declaration);
        limits.forEach(l -> found.when(l.broken().test(inputs), l.input(), l.statement(), l.remedy()));
        return found.problems();
    }

    @Override
    public Outcome<Results> compute(Inputs inputs) {
        List<Line> possible = lines.stream().filter(l -> l.has(inputs)).toList();
        String all = declaration.inputs().stream().map(Input::name).collect(Collectors.joining(", "));
        return Calculation.of(declaration, inputs)
                .needs(!possible.isEmpty(), "enough of " + all, "give " + all)
                .work(c -> possible.forEach(line -> line.fill(c)));
    }
}
