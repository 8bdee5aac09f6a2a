package servowright.engine.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.function.ToDoubleFunction;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Term;
import servowright.engine.known.Working;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Units;

/**
 * A worksheet while it is worked: every line computes one figure, keeps the formula with the figures put in, and may be a
 * result. What was taken without being given becomes an assumption of the answer.
 */
public final class Calculation {
    private final Declaration declaration;
    private final Inputs inputs;
    private final Results.Gathered gathered;
    private final Working.Sheet working = Working.begin();
    private final List<Need> needs = new ArrayList<>();
    private final List<Phrase> assumptions = new ArrayList<>();

    private Calculation(Declaration declaration, Inputs inputs) {
        this.declaration = declaration;
        this.inputs = inputs;
        this.gathered = Results.Gathered.of(declaration);
    }

    public static Calculation of(Declaration declaration, Inputs inputs) {
        Calculation calculation = new Calculation(declaration, inputs);
        declaration.inputs().forEach(calculation::assumed);
        return calculation;
    }

    /** Inputs without which there is no answer. */
    public Calculation needs(String... names) {
        for (String name : names) {
            if (!inputs.has(name)) {
                Input input = declared(name);
                needs.add(new Need(input.meaning(), "give " + name + ", for example " + input.example()));
            }
        }
        return this;
    }

    /** Something that no single input stands for, if {@code there} is false. */
    public Calculation needs(boolean there, String what, String settle) {
        if (!there) {
            needs.add(new Need(what, settle));
        }
        return this;
    }

    /** Works the sheet if everything it needs is there. */
    public Outcome<Results> work(Consumer<Calculation> lines) {
        if (needs.isEmpty()) {
            lines.accept(this);
        }
        // A sheet may find only while it works that it cannot go on.
        if (!needs.isEmpty()) {
            return new Outcome.Missing<>(needs);
        }
        Working done = working.end();
        return new Outcome.Answer<>(gathered.with(done), done, assumptions);
    }

    public Inputs inputs() {
        return inputs;
    }

    /** The figure given for an input, in the unit it was typed in. The input must be there. */
    public Term given(String symbol, String name) {
        return given(symbol, name, 0);
    }

    /** The figure given for an input at its n-th mention, counted from 0. */
    public Term given(String symbol, String name, int n) {
        Inputs.Value value = inputs.all(name).get(n);
        String unit = value.stated().map(s -> s.unit().symbol()).orElse("");
        return Term.of(symbol, value.known().orElseThrow(), unit);
    }

    /** The figure given for an input, if there is one. */
    public Optional<Term> term(String symbol, String name) {
        return inputs.has(name) ? Optional.of(given(symbol, name)) : Optional.empty();
    }

    /** The counted number given for an input that is there. */
    public int count(String name) {
        return (int) Math.rint(inputs.known(name).orElseThrow().si());
    }

    /** The figure as stated, with its basis, of an input that is there. */
    public Stated stated(String name) {
        return inputs.stated(name).orElseThrow();
    }

    /**
     * A line that is a result: meaning and unit come from the declaration.
     *
     * @param formula symbols in braces, the result's first
     * @param f       takes the terms' SI values in their order
     */
    public Term result(String name, String formula, String source, ToDoubleFunction<double[]> f, Term... terms) {
        Result result = declaration
                .result(name)
                .orElseThrow(() -> new IllegalArgumentException(declaration.name() + " declares no result " + name));
        Term line = step(result.meaning(), formula, result.unit(), source, f, terms);
        gathered.put(name, line.value());
        return line;
    }

    /** A line on the way to a result. */
    public Term step(
            String label, String formula, String unit, String source, ToDoubleFunction<double[]> f, Term... terms) {
        Known value = working.line(label, formula, unit, Units.named(unit).dimension(), source, f, terms);
        String symbol = formula.substring(formula.indexOf('{') + 1, formula.indexOf('}'));
        return Term.of(symbol, value, unit);
    }

    /** A result that is a word. */
    public Calculation word(String name, String word) {
        gathered.put(name, word);
        return this;
    }

    /** Something the reader should know. */
    public Calculation remark(Phrase remark) {
        gathered.remark(remark);
        return this;
    }

    /** Something taken without being given. */
    public Calculation assume(Phrase assumption) {
        assumptions.add(assumption);
        return this;
    }

    private void assumed(Input input) {
        inputs.first(input.name()).filter(value -> !value.given()).ifPresent(value -> {
            Phrase taken = Phrase.of(input.name() + " not given: {value} taken");
            assume(value.known()
                    .map(known ->
                            taken.with("value", known, given("", input.name()).unit()))
                    .orElse(taken.with("value", value.text())));
        });
    }

    private Input declared(String name) {
        return declaration
                .input(name)
                .orElseThrow(() -> new IllegalArgumentException(declaration.name() + " declares no input " + name));
    }
}
