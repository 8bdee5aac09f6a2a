package servowright.app.reference;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.known.Outcome;
import servowright.engine.known.Step;
import servowright.engine.known.Term;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.worksheet.Case;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Filled;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Results;
import servowright.engine.worksheet.Worksheet;

/**
 * The formulas that a worksheet uses, gathered from the workings of its cases: there is no second place where they are
 * written.
 *
 * @param lines   each formula once, in the order in which they are first used
 * @param symbols what each symbol stands for
 */
record Formulas(List<Line> lines, Map<String, Symbol> symbols) {
    /** A formula with what it computes, the unit of that, and its source. */
    record Line(String label, String formula, String unit, String source) {}

    /** What a symbol stands for. */
    record Symbol(String meaning, String unit) {}

    static Formulas of(Worksheet sheet, List<Case> cases) {
        Map<String, Line> lines = new LinkedHashMap<>();
        Map<String, Symbol> symbols = new LinkedHashMap<>();
        cases.stream().flatMap(c -> steps(sheet, c)).forEach(step -> {
            String formula = unnumbered(step.formula().replaceAll("[{}]", ""));
            String label = step.label().replaceAll(" \\(\\d+\\)", "");
            Line line = new Line(label, formula, step.result().unit(), step.source());
            lines.putIfAbsent(label + formula, line);
            step.terms().forEach(term -> symbols.putIfAbsent(term.symbol(), symbol(sheet.declaration(), term)));
            symbols.putIfAbsent(
                    step.result().symbol(),
                    new Symbol(step.label(), step.result().unit()));
        });
        return new Formulas(List.copyOf(lines.values()), symbols);
    }

    /** The formulas of each source together. */
    Map<String, List<Line>> bySource() {
        return lines.stream().collect(Collectors.groupingBy(Line::source, LinkedHashMap::new, Collectors.toList()));
    }

    /** The first figure of several and the second come about alike. */
    private static String unnumbered(String formula) {
        return formula.replaceAll("^(\\S+) \\d+ =", "$1 =");
    }

    private static Stream<Step> steps(Worksheet sheet, Case one) {
        if (Filled.of(sheet, one.given()) instanceof Filled.Ready ready
                && sheet.compute(ready.inputs()) instanceof Outcome.Answer<Results> answer) {
            return answer.working().steps().stream();
        }
        return Stream.empty();
    }

    /** A figure carries the name of its input, or the label of the line that computed it. */
    private static Symbol symbol(Declaration sheet, Term term) {
        String from = term.value().from().replaceAll(" \\(\\d+\\)$", "");
        Optional<Input> input = sheet.input(from);
        return input.map(i -> new Symbol(i.meaning(), unit(i))).orElseGet(() -> new Symbol(from, term.unit()));
    }

    /** The unit of an input's example: cases state it in others too. */
    private static String unit(Input input) {
        return QuantityText.parse(input.example()) instanceof Stated stated
                ? stated.unit().symbol()
                : "";
    }
}
