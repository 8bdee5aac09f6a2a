package servowright.app.input.form;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Spelling;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** The unit of a key that someone probably meant by a unit that does not fit it. */
final class UnitGuess {
    /** What people write for a unit, in lower case and without the s of a plural. */
    private static final Map<String, String> HABITS = Map.ofEntries(
            Map.entry("amp", "A"),
            Map.entry("ampere", "A"),
            Map.entry("volt", "V"),
            Map.entry("watt", "W"),
            Map.entry("henry", "H"),
            Map.entry("farad", "F"),
            Map.entry("tesla", "T"),
            Map.entry("c", "degC"),
            Map.entry("celsius", "degC"),
            Map.entry("kv", "rpm/V"),
            Map.entry("sec", "s"),
            Map.entry("rev", "turns"),
            Map.entry("mbp", "Mbit/s"),
            Map.entry("kbp", "kbit/s"));

    private UnitGuess() {}

    static Optional<String> of(String written, Key key) {
        String given = written.strip();
        return habit(given, key).or(() -> spelled(given, key));
    }

    private static Optional<String> habit(String given, Key key) {
        String word = given.toLowerCase(Locale.ROOT);
        String one = word.length() > 2 && word.endsWith("s") ? word.substring(0, word.length() - 1) : word;
        return Optional.ofNullable(HABITS.get(one))
                .filter(symbol -> Units.find(symbol)
                        .filter(unit -> unit.dimension().equals(key.dimension()))
                        .isPresent());
    }

    /** The same letters in another case, else at most a third of the letters away. */
    private static Optional<String> spelled(String given, Key key) {
        List<String> symbols = new ArrayList<>();
        Magnitude.relatives(KeyRange.usualUnit(key)).stream().map(Unit::symbol).forEach(symbols::add);
        symbols.addAll(Units.measuring(key.dimension()));
        Optional<String> sameLetters =
                symbols.stream().filter(given::equalsIgnoreCase).findFirst();
        return sameLetters.or(() -> given.length() < 3 ? Optional.empty() : Spelling.nearest(given, symbols));
    }
}
