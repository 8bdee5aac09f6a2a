package servowright.engine.known;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import servowright.engine.quantity.Dimension;

/**
 * How a figure came about, step by step.
 *
 * @param steps in the order they were taken
 */
public record Working(List<Step> steps) {
    /** A figure that needed no working. */
    public static final Working NONE = new Working(List.of());

    public Working {
        steps = List.copyOf(steps);
    }

    /** Both workings one after the other. */
    public Working then(Working other) {
        List<Step> all = new ArrayList<>(steps);
        all.addAll(other.steps);
        return new Working(all);
    }

    public static Sheet begin() {
        return new Sheet();
    }

    /** A working while it is written: each line computes its figure and keeps how. */
    public static final class Sheet {
        private final List<Step> steps = new ArrayList<>();

        private Sheet() {}

        /**
         * Computes a figure from others and writes the line down.
         *
         * @param label   what it is, in words
         * @param formula symbols in braces, the result's symbol first: <code>{Kt} = 3/2 · {p} · {λ}</code>
         * @param unit    unit to show the result in; empty for the usual one
         * @param result  dimension of the result
         * @param f       takes the terms' SI values in their order and gives the result's SI value
         */
        public Known line(
                String label,
                String formula,
                String unit,
                Dimension result,
                String source,
                ToDoubleFunction<double[]> f,
                Term... terms) {
            List<Term> in = List.of(terms);
            Known value = Propagation.derive(
                            result, f, in.stream().map(Term::value).toList())
                    .as(Origin.DERIVED, label);
            return note(label, formula, unit, source, value, terms);
        }

        /** Writes down a figure that was computed elsewhere. */
        public Known note(String label, String formula, String unit, String source, Known value, Term... terms) {
            steps.add(new Step(label, formula, List.of(terms), Term.of(symbol(formula), value, unit), source));
            return value;
        }

        /** Takes over the lines of a working done elsewhere. */
        public Sheet include(Working other) {
            steps.addAll(other.steps());
            return this;
        }

        public Working end() {
            return new Working(steps);
        }

        private static String symbol(String formula) {
            int open = formula.indexOf('{');
            int close = formula.indexOf('}');
            return open < 0 || close < open ? "" : formula.substring(open + 1, close);
        }
    }
}
