package servowright.app.input.form;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Place;
import servowright.engine.known.Problem;
import servowright.engine.machine.Key;
import servowright.engine.machine.Key.Qualifier;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Meter;
import servowright.engine.quantity.Side;
import servowright.engine.quantity.Spelling;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.StatedOrigin;
import servowright.engine.quantity.VoltageBasis;

/** Checks the words in square brackets: whether they are known, and whether they say something about this figure. */
public final class QualifierCheck {
    private static final double COLDEST_K = 173.15;
    private static final double WARMEST_K = 773.15;
    private static final String TEMPERATURE = "a temperature";

    private QualifierCheck() {}

    /** The words that may stand behind a figure of {@code key}, besides a temperature. */
    public static List<String> words(Key key) {
        List<String> words = new ArrayList<>();
        key.qualifiers().forEach(q -> words.addAll(words(q)));
        words.addAll(all(StatedOrigin.values(), StatedOrigin::words));
        return words;
    }

    static boolean suits(Key key, Stated stated, Place place, Problems problems) {
        int before = problems.count();
        Map<String, String> sorts = new LinkedHashMap<>();
        for (String word : stated.qualifiers()) {
            Optional<String> sort = sort(key, word);
            if (sort.isEmpty()) {
                problems.add(
                        Problem.Kind.NOT_ALLOWED_HERE,
                        place,
                        word,
                        statement(stated, key, word),
                        allowed(key),
                        remedy(key, word));
                continue;
            }
            String other = sorts.putIfAbsent(sort.get(), word);
            if (other != null) {
                problems.add(
                        Problem.Kind.CONTRADICTION,
                        place,
                        word,
                        "[" + other + "] and [" + Problems.shortened(word) + "] cannot both hold",
                        allowed(key),
                        "Keep one of them.");
            }
        }
        temperature(stated, place, problems);
        return problems.count() == before;
    }

    private static void temperature(Stated stated, Place place, Problems problems) {
        stated.temperature()
                .filter(t -> !(t.si() >= COLDEST_K && t.si() <= WARMEST_K))
                .ifPresent(t -> problems.add(
                        Problem.Kind.OUT_OF_RANGE,
                        place,
                        stated.text(),
                        "the temperature in square brackets is far outside -100 degC to 500 degC",
                        "-100 degC to 500 degC",
                        "Check the unit."));
    }

    /** What sort of word this is, if it may stand here; two of one sort contradict each other. */
    private static Optional<String> sort(Key key, String word) {
        if (all(StatedOrigin.values(), StatedOrigin::words).contains(word)) {
            return Optional.of("origin");
        }
        for (Qualifier q : key.qualifiers()) {
            boolean temperature =
                    q == Qualifier.TEMPERATURE && Stated.asTemperature(word).isPresent();
            if (temperature || words(q).contains(word)) {
                return Optional.of(q.name());
            }
        }
        return Optional.empty();
    }

    private static List<String> words(Qualifier q) {
        return switch (q) {
            case VOLTAGE_BASIS -> all(VoltageBasis.values(), VoltageBasis::words);
            case CURRENT_BASIS ->
                all(CurrentBasis.values(), CurrentBasis::words).stream()
                        .filter(w -> !w.equals(CurrentBasis.SUPPLY.words()))
                        .toList();
            case HOOK_UP -> all(HookUp.values(), HookUp::words);
            case SIDE -> all(Side.values(), Side::words);
            case METER -> all(Meter.values(), Meter::words);
            case TEMPERATURE -> List.of();
        };
    }

    private static <T> List<String> all(T[] values, Function<T, String> words) {
        return Arrays.stream(values).map(words).toList();
    }

    private static String allowed(Key key) {
        List<String> words = new ArrayList<>(words(key));
        if (key.qualifiers().contains(Qualifier.TEMPERATURE)) {
            words.add(TEMPERATURE);
        }
        return String.join(", ", words);
    }

    private static String statement(Stated stated, Key key, String word) {
        String shown = "[" + Problems.shortened(word) + "]";
        return stated.unknownQualifiers().contains(word)
                ? shown + " is not known in square brackets"
                : shown + " says nothing about " + key.meaning();
    }

    private static String remedy(Key key, String word) {
        if (key.qualifiers().contains(Qualifier.CURRENT_BASIS)) {
            if (word.equals(CurrentBasis.SUPPLY.words())) {
                return "A supply current is no motor current: give the motor current, [q axis] or [phase rms].";
            }
            if (word.equals(VoltageBasis.PHASE_PEAK.words())) {
                return "The peak of the phase current is the current on the q axis: write [q axis].";
            }
        }
        return Spelling.nearest(Problems.shortened(word), words(key))
                .map(near -> "Nearest: " + near + ".")
                .orElse("Known here: " + allowed(key) + ".");
    }
}
