package servowright.app.input.csv;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** Units as instruments spell them out. */
final class UnitWords {
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("volt", "V"),
            Map.entry("volts", "V"),
            Map.entry("millivolt", "mV"),
            Map.entry("millivolts", "mV"),
            Map.entry("ampere", "A"),
            Map.entry("amperes", "A"),
            Map.entry("amp", "A"),
            Map.entry("amps", "A"),
            Map.entry("milliampere", "mA"),
            Map.entry("watt", "W"),
            Map.entry("watts", "W"),
            Map.entry("ohms", "ohm"),
            Map.entry("hertz", "Hz"),
            Map.entry("second", "s"),
            Map.entry("seconds", "s"),
            Map.entry("sec", "s"),
            Map.entry("millisecond", "ms"),
            Map.entry("milliseconds", "ms"),
            Map.entry("msec", "ms"),
            Map.entry("microsecond", "us"),
            Map.entry("microseconds", "us"),
            Map.entry("usec", "us"),
            Map.entry("nanosecond", "ns"),
            Map.entry("nanoseconds", "ns"),
            Map.entry("sekunde", "s"),
            Map.entry("sekunden", "s"),
            Map.entry("newton", "N"),
            Map.entry("degree", "deg"),
            Map.entry("degrees", "deg"),
            Map.entry("radian", "rad"),
            Map.entry("radians", "rad"),
            Map.entry("celsius", "degC"));

    private UnitWords() {}

    /** The unit that {@code text} means, with or without brackets around it; the pure number does not count. */
    static Optional<Unit> find(String text) {
        String bare = Cells.bare(text);
        if (bare.length() > 1
                && "([".indexOf(bare.charAt(0)) >= 0
                && ")]".indexOf(bare.charAt(bare.length() - 1)) >= 0) {
            bare = bare.substring(1, bare.length() - 1).strip();
        }
        if (bare.isEmpty() || bare.length() > 20 || bare.equals("1")) {
            return Optional.empty();
        }
        String word = WORDS.get(bare.toLowerCase(Locale.ROOT));
        return Units.find(word == null ? bare : word);
    }

    /** Whether a unit measures time. */
    static boolean time(Unit unit) {
        return unit.dimension().equals(Dimension.TIME);
    }

    /** Whether {@code text} is a unit spelled out or in brackets, which a channel's name is not. */
    static boolean plainlyUnit(String text) {
        String bare = text.strip();
        boolean brackets = bare.startsWith("(") || bare.startsWith("[");
        return find(text).isPresent() && (brackets || WORDS.containsKey(bare.toLowerCase(Locale.ROOT)));
    }

    /** Whether a cell of a units row says that there is none. */
    static boolean none(String text) {
        return text.isEmpty() || text.equals("-") || text.equalsIgnoreCase("(none)") || text.equalsIgnoreCase("none");
    }
}
