package servowright.app.input.tree;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.known.Place;

/** A part of a text file: a scalar, a group of keys, or a list. */
public sealed interface Node {
    /** Where it begins. */
    Place place();

    /**
     * One value.
     *
     * @param text as written; empty when nothing stands there
     */
    record Scalar(Place place, String text) implements Node {
        /** Whether it says that nothing is known. */
        public boolean absent() {
            return switch (text.strip()) {
                case "", "unknown", "~", "null" -> true;
                default -> false;
            };
        }
    }

    /**
     * Keys with what stands behind them.
     *
     * @param entries by key, in the order of the file
     */
    record Group(Place place, Map<String, Entry> entries) implements Node {
        public Group {
            entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }
    }

    /** A list. */
    record Items(Place place, List<Node> items) implements Node {
        public Items {
            items = List.copyOf(items);
        }
    }

    /**
     * A key and its value.
     *
     * @param place where the key stands
     */
    record Entry(Place place, Node value) {}
}
