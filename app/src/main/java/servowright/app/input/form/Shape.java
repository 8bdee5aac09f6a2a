package servowright.app.input.form;

import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Dimension;

/** What may stand behind a key. */
public sealed interface Shape {
    /**
     * A figure in the grammar of quantities.
     *
     * @param words that may stand there instead
     */
    record Figure(Key key, List<String> words) implements Shape {
        public Figure {
            words = List.copyOf(words);
        }
    }

    /** One of a few words. */
    record Choice(List<String> words) implements Shape {
        public Choice {
            words = List.copyOf(words);
        }
    }

    /**
     * Text.
     *
     * @param form    that it must have, if it must have one
     * @param remedy  how to write it; empty when any text will do
     */
    record Words(Optional<Pattern> form, String remedy) implements Shape {
        static Words any() {
            return new Words(Optional.empty(), "");
        }

        static Words like(String form, String remedy) {
            return new Words(Optional.of(Pattern.compile(form)), remedy);
        }
    }

    /**
     * The name of a part declared elsewhere.
     *
     * @param section where: {@code motors}
     * @param one     what such a part is called: {@code motor}
     */
    record Reference(String section, String one) implements Shape {}

    /**
     * Limits of an instrument.
     *
     * @param shown what it shows, in words
     */
    record Limits(String shown, Dimension dimension) implements Shape {}

    /** Known keys. */
    record Group(List<Field> fields) implements Shape {
        public Group {
            fields = List.copyOf(fields);
        }

        /** The field of that key, if there is one. */
        public Optional<Field> field(String key) {
            return fields.stream().filter(f -> f.key().equals(key)).findFirst();
        }

        List<String> keys() {
            return fields.stream().map(Field::key).toList();
        }
    }

    /**
     * Parts under names that the user chooses.
     *
     * @param one  what each of them is called: {@code motor}
     * @param many what several of them are called: {@code motors}
     */
    record Named(String one, String many, Shape each) implements Shape {}

    /**
     * A list.
     *
     * @param one what each of them is called: {@code reading}
     */
    record Listed(String one, Shape each) implements Shape {}
}
