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
 * @param kind     quantity, whole number or one of a few words
 * @param allowed  dimensions a quantity may have; empty for the other kinds
 * @param range    closed range in SI of the first allowed dimension, if there is one
 * @param choices  words to choose from; empty for the other kinds
 * @param several  whether it may be given more than once
 * @param fallback what is taken when nothing is given, as it would be typed; empty when there is none
 * @param example  as it could be typed
 * @param bases    words that may stand in square brackets as its basis: how it is measured or contacted; empty when its
 *                 meaning hangs on no basis
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
        List<String> bases) {
    public enum Kind {
        QUANTITY,
        WHOLE_NUMBER,
        CHOICE
    }

    /** A closed range; both ends of one dimension. */
    public record Range(Quantity least, Quantity most) {}

    public Input {
        allowed = List.copyOf(allowed);
        choices = List.copyOf(choices);
        bases = List.copyOf(bases);
    }

    /** A quantity; {@code example} also tells the dimension, for example {@code 24 V}. */
    public static Input quantity(String name, Dimension dimension, String meaning, String example) {
        return new Input(
                name,
                meaning,
                Kind.QUANTITY,
                List.of(dimension),
                Optional.empty(),
                List.of(),
                false,
                "",
                example,
                List.of());
    }

    /** A counted number from {@code least} to {@code most}. */
    public static Input count(String name, String meaning, int least, int most, String example) {
        Range range = new Range(Quantity.number(least), Quantity.number(most));
        return new Input(
                name,
                meaning,
                Kind.WHOLE_NUMBER,
                List.of(Dimension.NUMBER),
                Optional.of(range),
                List.of(),
                false,
                "",
                example,
                List.of());
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
                List.of());
    }

    /** The same input with a closed range. */
    public Input within(Quantity least, Quantity most) {
        Optional<Range> closed = Optional.of(new Range(least, most));
        return new Input(name, meaning, kind, allowed, closed, choices, several, fallback, example, bases);
    }

    /** The same input with something to take when nothing is given. */
    public Input orElse(String text) {
        return new Input(name, meaning, kind, allowed, range, choices, several, text, example, bases);
    }

    /** The same input, which may be given more than once. */
    public Input repeatable() {
        return new Input(name, meaning, kind, allowed, range, choices, true, fallback, example, bases);
    }

    /** The same input, which may also be given in another dimension. */
    public Input orAs(Dimension other) {
        List<Dimension> more = new ArrayList<>(allowed);
        more.add(other);
        return new Input(name, meaning, kind, more, range, choices, several, fallback, example, bases);
    }

    /** The same input, which may say how it is measured or contacted. */
    public Input statedAs(List<String> words) {
        return new Input(name, meaning, kind, allowed, range, choices, several, fallback, example, words);
    }
}
