package servowright.engine.worksheet.encoder;

import java.util.List;
import java.util.function.ToDoubleFunction;
import servowright.engine.known.Term;
import servowright.engine.worksheet.Calculation;
import servowright.engine.worksheet.Inputs;

/**
 * One result of a worksheet and the inputs it follows from.
 *
 * @param result   name of the result
 * @param formula  symbols in braces, the result's first
 * @param source   where the formula comes from
 * @param function takes the SI values of the inputs in their order
 * @param inputs   symbol and name, joined by {@code =}
 */
record Line(String result, String formula, String source, ToDoubleFunction<double[]> function, List<String> inputs) {

    static Line of(
            String result, String formula, String source, ToDoubleFunction<double[]> function, String... inputs) {
        return new Line(result, formula, source, function, List.of(inputs));
    }

    boolean has(Inputs given) {
        return inputs.stream().allMatch(i -> given.has(name(i)));
    }

    /** Computes the result; every input must be there. */
    void fill(Calculation c) {
        Term[] terms = inputs.stream()
                .map(i -> c.given(i.substring(0, i.indexOf('=')), name(i)))
                .toArray(Term[]::new);
        c.result(result, formula, source, function, terms);
    }

    private static String name(String input) {
        return input.substring(input.indexOf('=') + 1);
    }
}
