package servowright.engine.worksheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.quantity.Stated;

/**
 * Inputs of a worksheet after checking: every value has an allowed dimension and lies in its range.
 *
 * @param values per input name, in the order of the declaration; only what was given or has a fallback
 */
public record Inputs(Map<String, List<Value>> values) {
    /**
     * One value.
     *
     * @param text   as it was typed
     * @param stated the quantity as it was stated; empty for a word
     * @param known  the quantity with its uncertainty; empty for a word
     * @param given  whether it was typed; false for what is taken when nothing is
     * @param cells  the parts of a row by their names; empty for all else
     */
    public record Value(
            String text, Optional<Stated> stated, Optional<Known> known, boolean given, Map<String, Value> cells) {
        public Value {
            cells = Collections.unmodifiableMap(new LinkedHashMap<>(cells));
        }

        /** The part of a row of that name, if it was given. */
        public Optional<Value> cell(String name) {
            return Optional.ofNullable(cells.get(name));
        }

        /** A word or text. */
        static Value word(String text, boolean given) {
            return new Value(text, Optional.empty(), Optional.empty(), given, Map.of());
        }

        /** A row of several parts. */
        static Value row(String text, Map<String, Value> cells) {
            return new Value(text, Optional.empty(), Optional.empty(), true, cells);
        }
    }

    public Inputs {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
    }

    public boolean has(String name) {
        return values.containsKey(name);
    }

    /** Every value given for an input; empty when there is none. */
    public List<Value> all(String name) {
        return values.getOrDefault(name, List.of());
    }

    /** The first value given for an input. */
    public Optional<Value> first(String name) {
        return all(name).stream().findFirst();
    }

    /** The figure given for an input. */
    public Optional<Known> known(String name) {
        return first(name).flatMap(Value::known);
    }

    /** The figure as it was stated, with its basis. */
    public Optional<Stated> stated(String name) {
        return first(name).flatMap(Value::stated);
    }

    /** The word chosen for an input. */
    public Optional<String> choice(String name) {
        return first(name).map(Value::text);
    }
}
