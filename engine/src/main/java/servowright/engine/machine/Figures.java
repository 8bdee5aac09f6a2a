package servowright.engine.machine;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;

/**
 * What was declared of one part of the machine.
 *
 * @param values per key what was given, in the order of the file; keys not given are absent
 */
public record Figures<K extends Enum<K> & Key.Named>(Map<K, List<Declared>> values) {
    public Figures {
        Map<K, List<Declared>> copy = new LinkedHashMap<>();
        values.forEach((k, v) -> copy.put(k, List.copyOf(v)));
        values = Collections.unmodifiableMap(copy);
    }

    /** A part of which nothing is known. */
    public static <K extends Enum<K> & Key.Named> Figures<K> none() {
        return new Figures<K>(Map.of());
    }

    /** Every value given for a key. */
    public List<Declared> all(K key) {
        return values.getOrDefault(key, List.of());
    }

    /** The first value given for a key. */
    public Optional<Declared> get(K key) {
        return all(key).stream().findFirst();
    }

    /** The first value given for a key, as an uncertain number. */
    public Optional<Known> known(K key) {
        return get(key).map(Declared::known);
    }

    /** The same figures with one more. */
    public Figures<K> with(K key, Declared value) {
        Map<K, List<Declared>> more = new LinkedHashMap<>(values);
        List<Declared> list = new ArrayList<>(all(key));
        list.add(value);
        more.put(key, list);
        return new Figures<K>(more);
    }
}
