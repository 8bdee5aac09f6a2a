package servowright.app.input.form;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.ParsedQuantity;
import servowright.engine.quantity.ParsedQuantity.Malformed;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** Checks one figure against its key: grammar, dimension, range, whole numbers, ranges and the words in brackets. */
final class FigureCheck {
    private static final int LONGEST = 300;

    private static final Pattern NUMBER_AND_REST =
            Pattern.compile("([+-]?[\\d.,]+(?:[eE][+-]?\\d+)?)\\s*([^\\[\\]±]*?)\\s*(?:\\[.*)?");

    private final Key key;
    private final List<Key> siblings;
    private final Problems problems;

    /**
     * @param siblings the figures that may stand beside it: one of them may be what was meant
     */
    FigureCheck(Key key, List<Key> siblings, Problems problems) {
        this.key = key;
        this.siblings = siblings;
        this.problems = problems;
    }

    Optional<Declared> read(String text, Place place) {
        ParsedQuantity parsed = text.length() > LONGEST
                ? new Malformed(text, "too long for a quantity", "write it like " + key.example())
                : QuantityText.parse(text);
        if (parsed instanceof Malformed m) {
            add(
                    Problem.Kind.NOT_A_QUANTITY,
                    place,
                    text,
                    Problems.quoted(text) + ": " + m.reason(),
                    meant(text).orElse(sentence(m.remedy())));
            return Optional.empty();
        }
        Stated stated = (Stated) parsed;
        boolean good = dimension(stated, place) && whole(stated, place) && range(stated, place);
        good &= QualifierCheck.suits(key, stated, place, problems);
        return good ? Optional.of(Declared.of(stated, place)) : Optional.empty();
    }

    /** A figure whose unit alone cannot be read, with the unit that was probably meant. */
    private Optional<String> meant(String text) {
        Matcher m = text.length() > LONGEST ? NUMBER_AND_REST.matcher("") : NUMBER_AND_REST.matcher(text.strip());
        return m.matches() && Units.find(m.group(2)).isEmpty()
                ? UnitGuess.of(m.group(2), key).map(u -> "Did you mean " + m.group(1) + " " + u + "?")
                : Optional.empty();
    }

    private boolean dimension(Stated stated, Place place) {
        if (stated.dimension().equals(key.dimension())) {
            return true;
        }
        String shown = Problems.shortened(stated.text());
        String statement = stated.dimension().equals(Dimension.NUMBER)
                ? shown + " has no unit"
                : shown + ": the unit does not fit " + key.meaning();
        add(Problem.Kind.WRONG_UNIT, place, stated.text(), statement, otherUnit(stated));
        return false;
    }

    private String otherUnit(Stated stated) {
        Unit usual = KeyRange.usualUnit(key);
        if (stated.dimension().equals(Dimension.NUMBER) && stated.spread() == Stated.Spread.VALUE) {
            Quantity meant = usual.quantity(stated.nominal().si());
            if (within(meant)) {
                return "Did you mean " + inUnit(stated, usual) + "?";
            }
        }
        Optional<Unit> similar = UnitGuess.of(stated.unit().symbol(), key)
                .flatMap(Units::find)
                .filter(u -> !stated.dimension().equals(Dimension.NUMBER));
        if (similar.isPresent()) {
            return "Did you mean " + inUnit(stated, similar.get()) + "?";
        }
        Optional<String> other = siblings.stream()
                .filter(k -> k.dimension().equals(stated.dimension()))
                .map(Key::path)
                .findFirst();
        return other.map(path -> "Did you mean the key " + path.replace(".", " / ") + "?")
                .orElse("Write it like " + key.example() + ".");
    }

    private boolean whole(Stated stated, Place place) {
        double number = stated.nominal().si();
        if (!key.whole() || (stated.spread() == Stated.Spread.VALUE && number == Math.rint(number))) {
            return true;
        }
        add(
                Problem.Kind.OUT_OF_RANGE,
                place,
                stated.text(),
                Problems.shortened(stated.text()) + " is no whole number",
                "Count again: " + key.meaning() + ".");
        return false;
    }

    private boolean range(Stated stated, Place place) {
        if (stated.spread() == Stated.Spread.RANGE && !key.range()) {
            add(
                    Problem.Kind.NOT_ALLOWED_HERE,
                    place,
                    stated.text(),
                    "one value is asked, " + Problems.shortened(stated.text()) + " is a range",
                    "Give one value, with its tolerance if it has one, like "
                            + Magnitude.text(stated.nominal(), stated.unit()) + " ± 5 %.");
            return false;
        }
        if (within(stated.lower()) && within(stated.upper())) {
            return true;
        }
        String allowed = KeyRange.words(key);
        problems.add(
                Problem.Kind.OUT_OF_RANGE,
                place,
                stated.text(),
                Problems.shortened(stated.text()) + (far(stated) ? " is far outside " : " is outside ") + allowed,
                allowed,
                meant(stated));
        return false;
    }

    private boolean within(Quantity q) {
        return q.si() >= key.least().si() && q.si() <= key.most().si();
    }

    private boolean far(Stated stated) {
        double least = key.least().si();
        double most = key.most().si();
        return stated.lower().si() < least - 0.9 * Math.abs(least)
                || stated.upper().si() > most + 9 * Math.abs(most);
    }

    /** The same number in another unit that would fit, if there is one. */
    private String meant(Stated stated) {
        return Stream.of(Stream.of(KeyRange.usualUnit(key)), Magnitude.relatives(stated.unit()).stream(), shares())
                .flatMap(Function.identity())
                .filter(u -> fits(stated.lower(), stated.unit(), u) && fits(stated.upper(), stated.unit(), u))
                .findFirst()
                .map(u -> "Did you mean " + inUnit(stated, u) + "?")
                .orElse("Write it like " + key.example() + ".");
    }

    private Stream<Unit> shares() {
        return key.dimension().equals(Dimension.NUMBER) && !key.whole() ? Stream.of(Units.named("%")) : Stream.empty();
    }

    private boolean fits(Quantity limit, Unit written, Unit meant) {
        double si = meant.toSi(written.fromSi(limit.si()));
        return si >= key.least().si() && si <= key.most().si();
    }

    /** The figure as it was written, its unit replaced. */
    private static String inUnit(Stated stated, Unit unit) {
        String body = Problems.shortened(stated.text().replaceFirst("\\s*\\[.*", ""));
        String symbol = stated.unit().symbol();
        return symbol.isEmpty()
                ? body + " " + unit.symbol()
                : body.replaceAll(
                        "(?<!\\p{L})" + Pattern.quote(symbol) + "(?![\\p{L}\\d])",
                        Matcher.quoteReplacement(unit.symbol()));
    }

    private void add(Problem.Kind kind, Place place, String given, String statement, String remedy) {
        problems.add(kind, place, given, statement, key.example(), remedy);
    }

    private static String sentence(String text) {
        String first = Character.toUpperCase(text.charAt(0)) + text.substring(1);
        return first.endsWith("?") ? first : first + ".";
    }
}
