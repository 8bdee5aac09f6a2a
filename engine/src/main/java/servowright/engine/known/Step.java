package servowright.engine.known;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One line of a working: what is computed, the formula, the figures put in, the result and the source.
 *
 * @param label   what it is, in words
 * @param formula with each symbol in braces, for example <code>{Kt} = 3/2 · {p} · {λ}</code>: a view shows it with the
 *                symbols, and again with their figures
 * @param terms   what was put in
 * @param result  what came out
 * @param source  author, title, year and equation or table; or the derivation in a few words
 */
public record Step(String label, String formula, List<Term> terms, Term result, String source) {
    public Step {
        terms = List.copyOf(terms);
    }

    /** By a few of its parts: the hash of all of them walks whole workings, and every prediction asks for it. */
    @Override
    public int hashCode() {
        return 31 * (31 * label.hashCode() + formula.hashCode())
                + Double.hashCode(result.value().si());
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Step step
                        && label.equals(step.label)
                        && formula.equals(step.formula)
                        && result.equals(step.result)
                        && terms.equals(step.terms)
                        && source.equals(step.source));
    }
}
