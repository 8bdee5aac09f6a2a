package servowright.engine.prediction;

import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Working;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Key;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.SupplyFigure;
import servowright.engine.quantity.Stated;

/** Figures as declared, or how to get them. */
final class Wanted {
    private static final Map<Key.Named, String> SETTLED_BY = Map.of(
            MotorFigure.THERMAL_RESISTANCE,
            "a heating run of 20 min at a steady current, resistance read before and after, or the data sheet",
            MotorFigure.ROTOR_INERTIA,
            "a coast-down with and without a known disc, or the data sheet",
            MotorFigure.DETENTS,
            "turn the shaft by hand once and count",
            AxisFigure.LOAD_INERTIA,
            "from the drawing, or the time to a speed at a known current",
            AxisFigure.LOAD_FRICTION,
            "the current at slow, steady speed",
            SupplyFigure.VOLTAGE,
            "a voltmeter on the empty and on the full supply");

    private Wanted() {}

    /** The first value declared for a key, or what would give one. */
    static <K extends Enum<K> & Key.Named> Outcome<Known> figure(Figures<K> figures, K key, String owner) {
        return declared(figures, key, owner)
                .fold(a -> Outcome.answer(a.value().known(), Working.NONE), m -> m.forAnother());
    }

    /** The first declaration for a key, or what would give one. */
    static <K extends Enum<K> & Key.Named> Outcome<Declared> declared(Figures<K> figures, K key, String owner) {
        Optional<Declared> found = figures.get(key);
        return found.isPresent() ? Outcome.answer(found.get(), Working.NONE) : missing(key, owner);
    }

    static <T> Outcome<T> missing(Key.Named key, String owner) {
        String line = lastWord(key.key().path()) + ": " + key.key().example();
        String settle = SETTLED_BY.containsKey(key)
                ? SETTLED_BY.get(key) + "; then " + line
                : "state it in machine.yaml, for example " + line;
        return Outcome.missing(words(key) + " of " + owner, settle);
    }

    /** A key as it is said: {@code current.peak} is the peak current. */
    static String words(Key.Named key) {
        String path = key.key().path().replace('_', ' ');
        int dot = path.indexOf('.');
        if (dot < 0) {
            return path;
        }
        String group = path.substring(0, dot);
        String rest = path.substring(dot + 1).replace('.', ' ');
        return group.equals("current") ? rest + " " + group : group + " " + rest;
    }

    private static String lastWord(String path) {
        return path.substring(path.lastIndexOf('.') + 1);
    }

    /** Lower end of what was declared: of a range its lower end, else the figure itself. */
    static Known least(Declared declared) {
        return end(declared, true);
    }

    /** Upper end of what was declared: of a range its upper end, else the figure itself. */
    static Known most(Declared declared) {
        return end(declared, false);
    }

    private static Known end(Declared declared, boolean lower) {
        Stated stated = declared.stated();
        if (stated.spread() != Stated.Spread.RANGE) {
            return declared.known();
        }
        return Known.exact(
                lower ? stated.lower() : stated.upper(),
                declared.known().origin(),
                declared.place().text());
    }
}
