package servowright.engine.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * One input of a worksheet.
 *
 * @param name     as it is typed, lower case with underscores
 * @param meaning  what it is, in words
 * @param kind     quantity, whole number, one of a few words, free text, or a row of several parts
 * @param allowed  dimensions a quantity may have; empty for the other kinds
 * @param range    closed range in SI of the first allowed dimension, if there is one
 * @param choices  words to choose from; empty for the other kinds
 * @param several  whether it may be given more than once
 * @param fallback what is taken when nothing is given, as it would be typed; empty when there is none
 * @param example  as it could be typed
 * @param bases    words that may stand in square brackets as its basis: how it is measured or contacted; empty when its
 *                 meaning hangs on no basis
 * @param columns  the parts of a row in their order; the last ones may be left out. Empty for the other kinds
 */
public record Input(
        String name,
        String meaning,
        Kind kind,
        List<Dimension> allowed,
        Optional<Range> range,
        List<String> choices,
        boolean several,
        String fallback,
        String example,
        List<String> bases,
        List<Input> columns) {
    public enum Kind {
        QUANTITY,
        WHOLE_NUMBER,
        CHOICE,
        TEXT,
        ROW
    }

    /** A closed range; both ends of one dimension. */
    public record Range(Quantity least, Quantity most) {}

    public Input {
        allowed = List.copyOf(allowed);
        choices = List.copyOf(choices);
        bases = List.copyOf(bases);
        columns = List.copyOf(columns);
    }

    private static Input plain(String name, String meaning, Kind kind, List<Dimension> allowed, String example) {
        return new Input(
                name, meaning, kind, allowed, Optional.empty(), List.of(), false, "", example, List.of(), List.of());
    }

    /** A quantity; {@code example} also tells the dimension, for example {@code 24 V}. */
    public static Input quantity(String name, Dimension dimension, String meaning, String example) {
        return plain(name, meaning, Kind.QUANTITY, List.of(dimension), example);
    }

    /** A counted number from {@code least} to {@code most}. */
    public static Input count(String name, String meaning, int least, int most, String example) {
        return plain(name, meaning, Kind.WHOLE_NUMBER, List.of(Dimension.NUMBER), example)
                .within(Quantity.number(least), Quantity.number(most));
    }

    /** One of a few words. */
    public static Input choice(String name, String meaning, String... choices) {
        return new Input(
                name,
                meaning,
                Kind.CHOICE,
                List.of(),
                Optional.empty(),
                List.of(choices),
                false,
                "",
                choices[0],
                List.of(),
                List.of());
    }

    /** Free text: a name, or digits that are no quantity. */
    public static Input text(String name, String meaning, String example) {
        return plain(name, meaning, Kind.TEXT, List.of(), example);
    }

    /** Several parts in one line with a comma and a blank, or a semicolon, between them. */
    public static Input row(String name, String meaning, String example, Input... columns) {
        return new Input(
                name,
                meaning,
                Kind.ROW,
                List.of(),
                Optional.empty(),
                List.of(),
                false,
                "",
                example,
                List.of(),
                List.of(columns));
    }

    /** The same input under another name. */
    public Input named(String other) {
        return new Input(other, meaning, kind, allowed, range, choices, several, fallback, example, bases, columns);
    }

    /** The same input with a closed range. */
    public Input within(Quantity least, Quantity most) {
        Optional<Range> closed = Optional.of(new Range(least, most));
        return new Input(name, meaning, kind, allowed, closed, choices, several, fallback, example, bases, columns);
    }

    /** The same input with something to take when nothing is given. */
    public Input orElse(String text) {
        return new Input(name, meaning, kind, allowed, range, choices, several, text, example, bases, columns);
    }

    /** The same input, which may be given more than once. */
    public Input repeatable() {
        return new Input(name, meaning, kind, allowed, range, choices, true, fallback, example, bases, columns);
    }

    /** The same input, which may also be given in another dimension. */
    public Input orAs(Dimension other) {
        List<Dimension> more = new ArrayList<>(allowed);
        more.add(other);
        return new Input(name, meaning, kind, more, range, choices, several, fallback, example, bases, columns);
    }

    /** The same input, which may say how it is measured or contacted. */
    public Input statedAs(List<String> words) {
        return new Input(name, meaning, kind, allowed, range, choices, several, fallback, example, words, columns);
    }
}
