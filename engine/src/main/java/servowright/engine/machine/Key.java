package servowright.engine.machine;

import java.util.Arrays;
import java.util.List;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * A figure that can be declared.
 *
 * @param path       key in the file, lower case with underscores; a dot leads into a group: {@code current.peak}
 * @param meaning    what it is, a few words
 * @param dimension  what it measures
 * @param least      smallest sensible value
 * @param most       largest sensible value
 * @param whole      whether it is counted
 * @param several    whether it may be given more than once, as a list
 * @param range      whether it may be a range to hold over, like {@code 19.5..29.2 V}
 * @param qualifiers what may stand in square brackets, besides where it comes from
 * @param example    as it could be written
 */
public record Key(
        String path,
        String meaning,
        Dimension dimension,
        Quantity least,
        Quantity most,
        boolean whole,
        boolean several,
        boolean range,
        List<Qualifier> qualifiers,
        String example) {
    /** What can be said of a figure in square brackets. */
    public enum Qualifier {
        VOLTAGE_BASIS,
        CURRENT_BASIS,
        HOOK_UP,
        TEMPERATURE,
        SIDE,
        METER
    }

    /** A part of the machine whose figures are enumerated. */
    public interface Named {
        Key key();
    }

    /** A figure between two sensible values; the example shows how it is written. */
    public static Key figure(String path, String meaning, Quantity least, Quantity most, String example) {
        return new Key(path, meaning, least.dimension(), least, most, false, false, false, List.of(), example);
    }

    /** A counted number. */
    public static Key count(String path, String meaning, int least, int most, String example) {
        return new Key(
                path,
                meaning,
                Dimension.NUMBER,
                Quantity.number(least),
                Quantity.number(most),
                true,
                false,
                false,
                List.of(),
                example);
    }

    /** The same key, with qualifiers allowed. */
    public Key stating(Qualifier... allowed) {
        return new Key(path, meaning, dimension, least, most, whole, several, range, Arrays.asList(allowed), example);
    }

    /** The same key, which may be given as a list. */
    public Key repeatable() {
        return new Key(path, meaning, dimension, least, most, whole, true, range, qualifiers, example);
    }

    /** The same key, which may be a range to hold over. */
    public Key overRange() {
        return new Key(path, meaning, dimension, least, most, whole, several, true, qualifiers, example);
    }
}
