package servowright.app.input.form;

import java.util.List;
import java.util.Optional;

/**
 * A key and what may stand behind it.
 *
 * @param key      as it is written
 * @param meaning  a few words
 * @param example  as it could be written; empty for groups
 * @param required whether the part it belongs to means nothing without it
 * @param with     which words under another key make it needed; empty when none do
 */
public record Field(String key, String meaning, String example, boolean required, Optional<With> with, Shape shape) {
    /**
     * Words under another key of the same part.
     *
     * @param key  the other key
     * @param said what must stand there
     */
    public record With(String key, List<String> said) {
        public With {
            said = List.copyOf(said);
        }
    }

    /** A key that may be left out. */
    public static Field of(String key, String meaning, String example, Shape shape) {
        return new Field(key, meaning, example, false, Optional.empty(), shape);
    }

    /** A key with further keys below it. */
    public static Field group(String key, String meaning, Shape shape) {
        return of(key, meaning, "", shape);
    }

    /** The same key, which may not be left out. */
    public Field needed() {
        return new Field(key, meaning, example, true, Optional.empty(), shape);
    }

    /** The same key, which may not be left out where another one says one of these words. */
    public Field neededWith(String other, List<String> said) {
        return new Field(key, meaning, example, false, Optional.of(new With(other, said)), shape);
    }
}
