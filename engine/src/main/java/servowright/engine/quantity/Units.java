package servowright.engine.quantity;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Reads the units people write. A unit is a product of factors with whole exponents, optionally divided by more of
 * them: {@code rpm/V}, {@code mV s/rad}, {@code kg cm2}, {@code N m/A}, {@code turns/s2}, {@code m/s^2}. Micro sign or
 * u, Ω or ohm, °C or degC, raised digits, a raised dot or a star between factors are all taken.
 */
public final class Units {
    private static final Pattern FACTOR = Pattern.compile("([^\\d^]+?)(?:\\^?(-?\\d))?");

    private Units() {}

    /** The unit written as {@code text}, if it can be read. Empty text is the pure number. */
    public static Optional<Unit> find(String text) {
        Unit written = UnitTable.ALL.get(text);
        if (written != null) {
            return Optional.of(written.renamed(text));
        }
        String spelled = spelling(text);
        if (spelled.isEmpty()) {
            return Optional.of(Unit.of("", Dimension.NUMBER, 1));
        }
        Unit whole = UnitTable.ALL.get(spelled);
        if (whole != null) {
            return Optional.of(whole.renamed(text.strip()));
        }
        return quotient(spelled).map(u -> u.renamed(text.strip()));
    }

    /**
     * The unit written as {@code text}.
     *
     * @throws IllegalArgumentException if it cannot be read
     */
    public static Unit named(String text) {
        return find(text).orElseThrow(() -> new IllegalArgumentException("\"" + text + "\" is not a unit known here"));
    }

    /** The known unit whose spelling comes nearest to {@code text}: for a message, not for reading. */
    public static Optional<String> nearest(String text) {
        String spelled = spelling(text);
        return UnitTable.ALL.keySet().stream()
                .filter(known -> Spelling.distance(known, spelled) <= 2)
                .min(Comparator.<String>comparingInt(known -> Spelling.distance(known, spelled))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /** The spellings of all units known by name that measure {@code dimension}: for a message, not for reading. */
    public static List<String> measuring(Dimension dimension) {
        return UnitTable.ALL.entrySet().stream()
                .filter(e -> e.getValue().dimension().equals(dimension))
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    private static Optional<Unit> quotient(String spelled) {
        String[] parts = spelled.split("/", -1);
        Optional<Unit> unit = product(parts[0]);
        for (int i = 1; i < parts.length; i++) {
            Optional<Unit> divisor = product(parts[i]);
            if (unit.isEmpty() || divisor.isEmpty()) {
                return Optional.empty();
            }
            Unit n = unit.get();
            Unit d = divisor.get();
            unit = Optional.of(Unit.of(spelled, n.dimension().over(d.dimension()), n.factor() / d.factor()));
        }
        return unit;
    }

    private static Optional<Unit> product(String text) {
        String spelled = text.strip();
        if (spelled.startsWith("(") && spelled.endsWith(")")) {
            spelled = spelled.substring(1, spelled.length() - 1).strip();
        }
        Unit whole = UnitTable.ALL.get(spelled);
        if (whole != null) {
            return scale(whole);
        }
        return longestFirst(spelled.split(" "));
    }

    /** Takes the longest known run of words from the left, so that {@code N m s} is torque times time. */
    private static Optional<Unit> longestFirst(String[] words) {
        Unit unit = Unit.of("", Dimension.NUMBER, 1);
        int at = 0;
        while (at < words.length) {
            int end = words.length;
            Optional<Unit> run = Optional.empty();
            while (run.isEmpty() && end > at) {
                run = run(words, at, end);
                end = run.isEmpty() ? end - 1 : end;
            }
            if (run.isEmpty()) {
                return Optional.empty();
            }
            Unit next = run.get();
            unit = Unit.of("", unit.dimension().times(next.dimension()), unit.factor() * next.factor());
            at = end;
        }
        return Optional.of(unit);
    }

    private static Optional<Unit> run(String[] words, int from, int to) {
        String text = String.join(" ", java.util.Arrays.copyOfRange(words, from, to));
        Unit known = UnitTable.ALL.get(text);
        if (known != null) {
            return scale(known);
        }
        return to - from == 1 ? factor(text) : Optional.empty();
    }

    private static Optional<Unit> factor(String text) {
        Matcher m = FACTOR.matcher(text);
        if (!m.matches() || m.group(2) == null) {
            return Optional.empty();
        }
        Unit base = UnitTable.ALL.get(m.group(1));
        if (base == null || base.offset() != 0) {
            return Optional.empty();
        }
        int n = Integer.parseInt(m.group(2));
        return Optional.of(Unit.of(text, base.dimension().power(n), Math.pow(base.factor(), n)));
    }

    /** Inside a compound a temperature is a difference: its scale's zero does not count. */
    private static Optional<Unit> scale(Unit unit) {
        return Optional.of(Unit.of(unit.symbol(), unit.dimension(), unit.factor()));
    }

    /** One spelling for the many ways to write the same unit. */
    static String spelling(String text) {
        return text.strip()
                .replace('\u00b7', ' ')
                .replace('\u22c5', ' ')
                .replace('*', ' ')
                .replace('\u03bc', '\u00b5')
                .replace('\u2126', '\u03a9')
                .replace("\u03a9", "ohm")
                .replace("Ohm", "ohm")
                .replace("milliohm", "mohm")
                .replace("\u00b0C", "degC")
                .replace("\u00b0F", "degF")
                .replace("\u00b0", "deg")
                .replace("\u00b2", "2")
                .replace("\u00b3", "3")
                .replace("^", "")
                .replace("RPM", "rpm")
                .replace("oz-in", "oz in")
                .replace("ozf-in", "ozf in")
                .replace("oz.in", "oz in")
                .replace("ozf.in", "ozf in")
                .replace("lb-in", "lb in")
                .replace("lb-ft", "lb ft")
                .replace("kgf.cm", "kgf cm")
                .replace("kg.cm", "kg cm")
                .replace("kg-cm", "kg cm")
                .replace("\u00b5", "u")
                .replaceAll("\\s+", " ")
                .replaceAll("\\s*/\\s*", "/");
    }
}
