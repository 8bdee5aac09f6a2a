package servowright.app.view;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.known.Step;
import servowright.engine.known.Term;
import servowright.engine.known.Working;

/**
 * One line of a working as it is shown.
 *
 * @param label   what is computed
 * @param formula with its symbols: {@code Kt = 3/2 · p · λ}
 * @param numbers the right side with the figures put in: {@code 3/2 · 7 · 2.5 mWb}; empty when nothing was put in
 * @param symbol  of the result; may be empty
 * @param result  what came out
 * @param source  author, title, year, equation or table
 * @param terms   what was put in
 */
public record WorkingText(
        String label,
        String formula,
        String numbers,
        String symbol,
        FigureText result,
        String source,
        List<TermText> terms) {
    /** Where the result comes from when nothing was put in: {@code measured, recordings/lift-spin-2.csv}. */
    public String from() {
        return from(result);
    }

    /** Something put in: symbol, figure, and where it comes from in words. */
    public record TermText(String symbol, FigureText figure, String from) {}

    private static final Pattern SYMBOL = Pattern.compile("\\{([^{}]*)}");

    public WorkingText {
        terms = List.copyOf(terms);
    }

    static List<WorkingText> of(Working working) {
        return of(working, false);
    }

    /** Every line; {@code full} keeps the digits of a worksheet. */
    static List<WorkingText> of(Working working, boolean full) {
        return LateList.of(
                () -> working.steps().stream().map(step -> of(step, full)).toList());
    }

    private static WorkingText of(Step step, boolean full) {
        List<TermText> terms = new ArrayList<>();
        for (Term term : step.terms()) {
            FigureText figure = figure(term, full);
            terms.add(new TermText(term.symbol(), figure, from(figure)));
        }
        String formula = SYMBOL.matcher(step.formula()).replaceAll(m -> Matcher.quoteReplacement(m.group(1)));
        String symbol = step.result().symbol();
        FigureText result = figure(step.result(), full);
        return new WorkingText(step.label(), formula, numbers(step, terms), symbol, result, step.source(), terms);
    }

    private static FigureText figure(Term term, boolean full) {
        return full ? FigureText.full(term.value(), term.unit()) : FigureText.of(term.value(), term.unit());
    }

    /** Origin and place: {@code measured, spin of hub, bench.yaml:3}. */
    static String from(FigureText figure) {
        String origin = figure.known().origin().words();
        String place = figure.known().from();
        return place.isEmpty() || place.equals(origin) ? origin : origin + ", " + place;
    }

    private static String numbers(Step step, List<TermText> terms) {
        if (terms.isEmpty()) {
            return "";
        }
        String formula = step.formula();
        int equals = formula.indexOf('=');
        String right = equals < 0 ? formula : formula.substring(equals + 1).strip();
        Matcher m = SYMBOL.matcher(right);
        StringBuilder all = new StringBuilder();
        while (m.find()) {
            char next = m.end() < right.length() ? right.charAt(m.end()) : ' ';
            String shown = terms.stream()
                    .filter(t -> t.symbol().equals(m.group(1)))
                    .findFirst()
                    .map(t -> inFormula(t.figure(), next))
                    .orElse(m.group(1));
            m.appendReplacement(all, Matcher.quoteReplacement(shown));
        }
        return m.appendTail(all).toString();
    }

    /** In brackets where sign, power or a letter after it would be misread. */
    private static String inFormula(FigureText figure, char next) {
        String text = figure.valueText();
        boolean raised = next == '²' || next == '³' || next == '^';
        return text.startsWith("-") || (raised && text.contains(" ")) ? "(" + text + ")" : text;
    }
}
