package servowright.app.input.form;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Place;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Figures;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Accuracy;

/** What was read and found good. What was not is absent, and a problem. */
public sealed interface Value {
    Place place();

    /** Text, a chosen word, or a name. */
    record Words(Place place, String text) implements Value {}

    /** One figure, or several where that is allowed. */
    record Given(Place place, List<Declared> figures) implements Value {
        public Given {
            figures = List.copyOf(figures);
        }
    }

    /** Limits of an instrument. */
    record Limits(Place place, Accuracy accuracy) implements Value {}

    /** A list. */
    record Series(Place place, List<Value> items) implements Value {
        public Series {
            items = List.copyOf(items);
        }
    }

    /** Values by key or name, in the order of the file. */
    record Part(Place place, Map<String, Value> values) implements Value {
        public Part {
            values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        }

        /** What stands under a key; a dot leads into a group. */
        public Optional<Value> at(String path) {
            int dot = path.indexOf('.');
            if (dot < 0) {
                return Optional.ofNullable(values.get(path));
            }
            return at(path.substring(0, dot))
                    .filter(Part.class::isInstance)
                    .flatMap(v -> ((Part) v).at(path.substring(dot + 1)));
        }

        /** The text under a key. */
        public Optional<String> words(String path) {
            return at(path).filter(Words.class::isInstance).map(v -> ((Words) v).text());
        }

        /** The group under a key, empty when it is absent. */
        public Part part(String path) {
            return at(path).filter(Part.class::isInstance)
                    .map(Part.class::cast)
                    .orElseGet(() -> new Part(place, Map.of()));
        }

        /** The groups among the values, by name. */
        public Map<String, Part> parts() {
            Map<String, Part> parts = new LinkedHashMap<>();
            values.forEach((name, v) -> {
                if (v instanceof Part part) {
                    parts.put(name, part);
                }
            });
            return parts;
        }

        /** The groups of the list under a key. */
        public List<Part> series(String path) {
            List<Part> parts = new ArrayList<>();
            if (at(path).orElse(null) instanceof Series series) {
                series.items().stream()
                        .filter(Part.class::isInstance)
                        .map(Part.class::cast)
                        .forEach(parts::add);
            }
            return parts;
        }

        /** The texts of a group, by key. */
        public Map<String, String> texts(String path) {
            Map<String, String> texts = new LinkedHashMap<>();
            part(path).values().forEach((key, v) -> {
                if (v instanceof Words words) {
                    texts.put(key, words.text());
                }
            });
            return texts;
        }

        /** The first figure under a key. */
        public Optional<Declared> figure(String path) {
            return at(path).filter(Given.class::isInstance)
                    .flatMap(v -> ((Given) v).figures().stream().findFirst());
        }

        /** All figures of one enumeration, in the order of the file. */
        public <K extends Enum<K> & Key.Named> Figures<K> figures(Class<K> keys) {
            Map<K, List<Declared>> found = new LinkedHashMap<>();
            record Found<K>(K key, Given given) {}
            List<Found<K>> all = new ArrayList<>();
            for (K k : keys.getEnumConstants()) {
                if (at(k.key().path()).orElse(null) instanceof Given given) {
                    all.add(new Found<>(k, given));
                }
            }
            all.sort(Comparator.comparingInt(f -> f.given().place().line()));
            all.forEach(f -> found.put(f.key(), f.given().figures()));
            return new Figures<K>(found);
        }
    }
}
