package servowright.engine.worksheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.known.Place;
import servowright.engine.quantity.Stated;

/**
 * A worked example with a known answer.
 *
 * @param name     what it is about, in words
 * @param sheet    worksheet it fills
 * @param given    per input what is typed
 * @param expected what must come out
 * @param kind     what the answer rests on
 * @param source   author, title, year, equation or table; or in a few words where it comes from
 * @param note     what else to know about the answer; may be empty
 * @param place    where the case is written
 */
public record Case(
        String name,
        String sheet,
        Map<String, List<String>> given,
        Expected expected,
        Kind kind,
        String source,
        String note,
        Place place) {
    /** What an answer rests on. */
    public enum Kind {
        /** Printed in the source named. */
        PUBLISHED("published", "printed in the source named"),
        /** A rule of the trade without a source. */
        PRACTICE("practice", "a rule of the trade without a source"),
        /** Derived or computed independently of this program. */
        DERIVED("derived", "derived or computed independently of this program"),
        /** Recalled; the source named was not opened. */
        MEMORY("memory", "recalled; the source named was not opened");

        private final String word;
        private final String meaning;

        Kind(String word, String meaning) {
            this.word = word;
            this.meaning = meaning;
        }

        /** As it is written in a case. */
        public String word() {
            return word;
        }

        /** What it says of the answer. */
        public String meaning() {
            return meaning;
        }
    }

    /**
     * What must come out of a worksheet: results, or none and why.
     *
     * @param figures per result a value with the tolerance it must agree within
     * @param words   per result the word it must be
     * @param says    words that some remark or assumption must hold, each of them
     * @param missing words that some need must hold when there is no answer; empty when there is one
     * @param refused words that some problem must hold when the input is refused; empty when it is not
     */
    public record Expected(
            Map<String, Stated> figures,
            Map<String, String> words,
            List<String> says,
            List<String> missing,
            List<String> refused) {
        public Expected {
            figures = Collections.unmodifiableMap(new LinkedHashMap<>(figures));
            words = Collections.unmodifiableMap(new LinkedHashMap<>(words));
            says = List.copyOf(says);
            missing = List.copyOf(missing);
            refused = List.copyOf(refused);
        }

        /** How many things are checked. */
        public int size() {
            return figures.size() + words.size() + says.size() + missing.size() + refused.size();
        }
    }

    public Case {
        given = Collections.unmodifiableMap(new LinkedHashMap<>(given));
    }
}
