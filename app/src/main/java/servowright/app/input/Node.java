package servowright.app.input;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A piece of a text file that knows the line it stands on. Scalars keep the text as it was typed. */
sealed interface Node {
    /** Line it begins on, counted from 1. */
    int line();

    /** What it is, in words. */
    String what();

    /** A word, number or sentence; empty when nothing stands there. */
    record Scalar(String text, int line) implements Node {
        @Override
        public String what() {
            return text.isEmpty() ? "nothing" : "\"" + text + "\"";
        }
    }

    /** A list. */
    record Items(List<Node> nodes, int line) implements Node {
        public Items {
            nodes = List.copyOf(nodes);
        }

        @Override
        public String what() {
            return "a list";
        }
    }

    /** Named values in their order. */
    record Entries(Map<String, Entry> entries, int line) implements Node {
        public Entries {
            entries = Collections.unmodifiableMap(new LinkedHashMap<>(entries));
        }

        @Override
        public String what() {
            return "named values";
        }
    }

    /** A value under its name; {@code line} is that of the name. */
    record Entry(Node value, int line) {}
}
