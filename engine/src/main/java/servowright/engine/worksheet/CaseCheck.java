package servowright.engine.worksheet;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Stated;

/**
 * A case beside what the worksheet gives for it.
 *
 * @param which the case
 * @param lines one for each thing expected, in their order
 */
public record CaseCheck(Case which, List<Line> lines) {
    public CaseCheck {
        lines = List.copyOf(lines);
    }

    /** One thing expected and what came of it. */
    public sealed interface Line {
        /** Name of the result, or what kind of sentence is expected. */
        String what();

        /** Whether it came out as expected. */
        boolean within();
    }

    /**
     * A value beside another.
     *
     * @param what   name of the result
     * @param theirs value expected, with the tolerance it must agree within
     * @param ours   value found
     */
    public record Figure(String what, Stated theirs, Known ours) implements Line {
        /** Ours less theirs, SI. */
        public double difference() {
            return ours.si() - theirs.nominal().si();
        }

        /** Half-width of the tolerance, SI. */
        public double tolerance() {
            return (theirs.upper().si() - theirs.lower().si()) / 2;
        }

        @Override
        public boolean within() {
            return ours.dimension().equals(theirs.dimension()) && Math.abs(difference()) <= tolerance() + rounding();
        }

        /** A tolerance of nothing still leaves the last bits of the unit conversion. */
        private double rounding() {
            return 4 * Math.ulp(theirs.nominal().si());
        }
    }

    /**
     * Words beside other words.
     *
     * @param what   name of the result, or {@code says}, {@code missing}, {@code refused}
     * @param theirs words expected
     * @param ours   what was found instead, or the sentence that holds them
     * @param within whether they are there
     */
    public record Words(String what, String theirs, String ours, boolean within) implements Line {}

    /** Whether everything came out as expected. */
    public boolean within() {
        return lines.stream().allMatch(Line::within);
    }

    /** Fills the worksheet of a case and compares. */
    public static CaseCheck of(Case which) {
        Optional<Worksheet> sheet = Worksheets.named(which.sheet());
        if (sheet.isEmpty()) {
            return nothing(which, "there is no worksheet " + which.sheet());
        }
        Filled filled = Filled.of(sheet.get(), which.given());
        if (filled instanceof Filled.Refused refused) {
            List<String> said = refused.problems().stream().map(Problem::text).toList();
            return refusal(which, "refused", which.expected().refused(), said);
        }
        Inputs inputs = ((Filled.Ready) filled).inputs();
        return sheet.get()
                .compute(inputs)
                .fold(
                        answer -> compare(which, answer),
                        missing -> refusal(
                                which,
                                "missing",
                                which.expected().missing(),
                                missing.needs().stream().map(Outcome.Need::what).toList()));
    }

    private static CaseCheck compare(Case which, Outcome.Answer<Results> answer) {
        Case.Expected expected = which.expected();
        List<Line> lines = new ArrayList<>();
        Map<String, Phrase.Part> values = answer.value().values();
        expected.figures().forEach((name, theirs) -> lines.add(figure(name, theirs, values)));
        expected.words().forEach((name, theirs) -> lines.add(word(name, theirs, values)));
        List<String> said = Stream.concat(answer.value().remarks().stream(), answer.assumptions().stream())
                .map(CaseCheck::words)
                .toList();
        expected.says().forEach(words -> lines.add(held("says", words, said)));
        expected.missing().forEach(words -> lines.add(new Words("missing", words, "there is an answer", false)));
        expected.refused().forEach(words -> lines.add(new Words("refused", words, "there is an answer", false)));
        return new CaseCheck(which, lines);
    }

    private static Line figure(String name, Stated theirs, Map<String, Phrase.Part> values) {
        return values.get(name) instanceof Phrase.Figure found
                ? new Figure(name, theirs, found.value())
                : new Words(name, theirs.text(), shown(values.get(name)), false);
    }

    private static Line word(String name, String theirs, Map<String, Phrase.Part> values) {
        String ours = shown(values.get(name));
        return new Words(name, theirs, ours, ours.equals(theirs));
    }

    private static String shown(Phrase.@org.jspecify.annotations.Nullable Part part) {
        if (part == null) {
            return "no such result";
        }
        return part instanceof Phrase.Word word ? word.text() : "a figure";
    }

    /** The same lines for what was wrong, with the reason why nothing came out in place of each result. */
    private static CaseCheck refusal(Case which, String what, List<String> expected, List<String> said) {
        if (expected.isEmpty()) {
            return nothing(which, what + ": " + String.join("; ", said));
        }
        List<Line> lines = new ArrayList<>();
        expected.forEach(words -> lines.add(held(what, words, said)));
        if (which.expected().size() > expected.size()) {
            lines.add(new Words("results", "some", what, false));
        }
        return new CaseCheck(which, lines);
    }

    private static CaseCheck nothing(Case which, String why) {
        return new CaseCheck(
                which, List.of(new Words("results", which.expected().size() + " expected", why, false)));
    }

    private static Line held(String what, String words, List<String> said) {
        Optional<String> holding = said.stream().filter(s -> s.contains(words)).findFirst();
        return new Words(what, words, holding.orElse(String.join("; ", said)), holding.isPresent());
    }

    /** A sentence with its words in place; figures stay as names, since only a view gives them digits. */
    private static String words(Phrase phrase) {
        String text = phrase.template();
        for (Map.Entry<String, Phrase.Part> figure : phrase.figures().entrySet()) {
            if (figure.getValue() instanceof Phrase.Word word) {
                text = text.replace("{" + figure.getKey() + "}", word.text());
            }
        }
        return text;
    }
}
