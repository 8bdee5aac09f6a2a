package servowright.app.reference;

import java.util.List;
import java.util.stream.Collectors;
import servowright.app.view.RangeText;
import servowright.engine.worksheet.Declaration;
import servowright.engine.worksheet.Input;
import servowright.engine.worksheet.Result;

/** What one worksheet takes and gives, and by which formulas. */
final class FormulaPage {
    private FormulaPage() {}

    static String of(Declaration sheet, Formulas formulas) {
        StringBuilder page = new StringBuilder();
        page.append("# ").append(sheet.title()).append("\n\n").append(ReferencePages.HEAD);
        page.append("\nWorksheet `").append(sheet.name()).append("`. ");
        page.append(sheet.about()).append("\n");
        page.append("Worked cases: [validation](../validation/")
                .append(sheet.name())
                .append(".md).\n");
        page.append("\n## Inputs\n\n").append(inputs(sheet.inputs()));
        page.append("\n## Results\n\n").append(results(sheet.results()));
        page.append("\n## Formulas\n");
        formulas.bySource()
                .forEach((source, lines) ->
                        page.append("\nSource: ").append(source).append("\n\n").append(lines(lines)));
        page.append("\n## Symbols\n\n").append(symbols(formulas));
        page.append("\n## Sources\n\n");
        sheet.sources().forEach(source -> page.append("- ").append(source).append("\n"));
        return page.toString();
    }

    private static String inputs(List<Input> inputs) {
        Table table = Table.of("input", "meaning", "example", "range", "basis", "taken when not given");
        for (Input input : inputs) {
            String meaning = input.meaning() + parts(input) + (input.several() ? "; may be given more than once" : "");
            String example = input.kind() == Input.Kind.CHOICE
                    ? "one of " + String.join(", ", input.choices())
                    : input.example();
            String range = input.range().map(RangeText::of).orElse("");
            table.line(input.name(), meaning, example, range, String.join(", ", input.bases()), input.fallback());
        }
        return table.text();
    }

    private static String parts(Input row) {
        return row.columns().stream()
                .map(column -> "; " + column.name() + ": " + column.meaning())
                .collect(Collectors.joining());
    }

    private static String results(List<Result> results) {
        Table table = Table.of("result", "meaning", "unit");
        results.forEach(result -> table.line(result.name(), result.meaning(), result.unit()));
        return table.text();
    }

    private static String lines(List<Formulas.Line> lines) {
        Table table = Table.of("formula", "computes", "unit");
        lines.forEach(line -> table.line("`" + line.formula() + "`", line.label(), line.unit()));
        return table.text();
    }

    private static String symbols(Formulas formulas) {
        Table table = Table.of("symbol", "stands for", "unit");
        formulas.symbols().forEach((symbol, means) -> table.line("`" + symbol + "`", means.meaning(), means.unit()));
        return table.text();
    }
}
