package servowright.engine.worksheet.encoder;

import java.util.List;
import java.util.stream.Collectors;
import servowright.engine.known.Outcome;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Inputs;
import servowright.engine.worksheet.Result;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/** A worksheet of independent lines: each result is computed whose inputs are there. */
record LineSheet(Declaration declaration, List<Line> lines) implements Worksheet {

    static LineSheet of(
            String name, String title, String about, List<Input> inputs, List<Result> results, List<Line> lines) {
        List<String> sources = lines.stream().map(Line::source).distinct().toList();
        return new LineSheet(new Declaration(name, title, about, inputs, results, sources), lines);
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
