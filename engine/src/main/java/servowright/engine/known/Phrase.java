package servowright.engine.known;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import servowright.engine.quantity.Quantity;

/**
 * A sentence with its figures kept as figures: only a view turns them into digits.
 *
 * @param template words with the figures' names in braces: <code>asks {asked}, gets {gets}</code>
 * @param figures  what stands for each name
 */
public record Phrase(String template, Map<String, Part> figures) {
    /** What can stand in a sentence. */
    public sealed interface Part {}

    /** A word or name. */
    public record Word(String text) implements Part {}

    /**
     * A figure.
     *
     * @param unit to show it in; empty for the usual one of its dimension
     */
    public record Figure(Known value, String unit) implements Part {
        @Override
        public int hashCode() {
            return value.hashCode();
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return this == other
                    || (other instanceof Figure figure && unit.equals(figure.unit) && value.equals(figure.value));
        }
    }

    public Phrase {
        figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
        for (String name : figures.keySet()) {
            if (!template.contains("{" + name + "}")) {
                throw new IllegalArgumentException("\"" + template + "\" has no place for " + name);
            }
        }
    }

    /** By its words alone: sentences with the same words and other figures are rare, and equals tells them apart. */
    @Override
    public int hashCode() {
        return template.hashCode();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Phrase phrase
                        && template.equals(phrase.template)
                        && figures.equals(phrase.figures));
    }

    /** A sentence without figures. */
    public static Phrase of(String words) {
        return new Phrase(words, Map.of());
    }

    /** The same sentence with a figure for one of its names. */
    public Phrase with(String name, Known value) {
        return with(name, value, "");
    }

    /** The same sentence with a figure for one of its names, shown in the unit given. */
    public Phrase with(String name, Known value, String unit) {
        return put(name, new Figure(value, unit));
    }

    /** The same sentence with a figure that has no uncertainty. */
    public Phrase with(String name, Quantity value, String unit) {
        return put(name, new Figure(Known.exact(value, Origin.DERIVED, ""), unit));
    }

    /** The same sentence with a number. */
    public Phrase with(String name, double number) {
        return with(name, Quantity.number(number), "");
    }

    /** The same sentence with a word for one of its names. */
    public Phrase with(String name, String word) {
        return put(name, new Word(word));
    }

    private Phrase put(String name, Part part) {
        Map<String, Part> more = new LinkedHashMap<>(figures);
        more.put(name, part);
        return new Phrase(template, more);
    }
}
