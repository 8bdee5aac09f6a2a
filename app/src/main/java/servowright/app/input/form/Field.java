package servowright.app.input.form;

/**
 * A key and what may stand behind it.
 *
 * @param key      as it is written
 * @param meaning  a few words
 * @param example  as it could be written; empty for groups
 * @param required whether the part it belongs to means nothing without it
 */
public record Field(String key, String meaning, String example, boolean required, Shape shape) {
    /** A key that may be left out. */
    public static Field of(String key, String meaning, String example, Shape shape) {
        return new Field(key, meaning, example, false, shape);
    }

    /** A key with further keys below it. */
    public static Field group(String key, String meaning, Shape shape) {
        return of(key, meaning, "", shape);
    }

    /** The same key, which may not be left out. */
    public Field needed() {
        return new Field(key, meaning, example, true, shape);
    }
}
