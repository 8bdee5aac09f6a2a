package servowright.engine.worksheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;

/**
 * What a worksheet gave.
 *
 * @param values  per result name, in the order of the declaration; a figure or a word
 * @param working how they came about
 * @param remarks what the reader should know: a contradiction with its ratio, a range left, an assumption
 */
public record Results(Map<String, Phrase.Part> values, Working working, List<Phrase> remarks) {
    public Results {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        remarks = List.copyOf(remarks);
    }

    /** The figure of that name; empty when there is none or it is a word. */
    public Optional<Known> figure(String name) {
        return values.get(name) instanceof Phrase.Figure figure ? Optional.of(figure.value()) : Optional.empty();
    }

    /** The word of that name; empty when there is none or it is a figure. */
    public Optional<String> word(String name) {
        return values.get(name) instanceof Phrase.Word word ? Optional.of(word.text()) : Optional.empty();
    }

    /** Results while they are gathered. */
    public static final class Gathered {
        private final Declaration declaration;
        private final Map<String, Phrase.Part> values = new LinkedHashMap<>();
        private final List<Phrase> remarks = new java.util.ArrayList<>();

        Gathered(Declaration declaration) {
            this.declaration = declaration;
        }

        public static Gathered of(Declaration declaration) {
            return new Gathered(declaration);
        }

        /** A figure, shown in the unit that the declaration names. */
        public Gathered put(String name, Known value) {
            values.put(name, new Phrase.Figure(value, declared(name).unit()));
            return this;
        }

        /** A word. */
        public Gathered put(String name, String word) {
            declared(name);
            values.put(name, new Phrase.Word(word));
            return this;
        }

        /** Something the reader should know. */
        public Gathered remark(Phrase remark) {
            remarks.add(remark);
            return this;
        }

        public Results with(Working working) {
            return new Results(values, working, remarks);
        }

        private Result declared(String name) {
            return declaration
                    .result(name)
                    .orElseThrow(() ->
                            new IllegalArgumentException(declaration.name() + " declares no result \"" + name + "\""));
        }
    }
}
