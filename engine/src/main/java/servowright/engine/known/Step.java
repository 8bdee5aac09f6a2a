package servowright.engine.known;

import java.util.List;

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
}
