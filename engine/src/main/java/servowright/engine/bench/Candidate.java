package servowright.engine.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;

/**
 * One value of a parameter: from the label, from a test, from counting.
 *
 * @param from        in words: {@code label}, {@code spin hub 1}
 * @param working     how it came about, down to what was stated or read
 * @param assumptions what was taken without being known
 */
public record Candidate(Known value, String from, Working working, List<Phrase> assumptions) {
    public Candidate {
        assumptions = List.copyOf(assumptions);
    }

    /** A value that rests on nothing assumed. */
    public Candidate(Known value, String from, Working working) {
        this(value, from, working, List.of());
    }

    @Override
    public int hashCode() {
        return from.hashCode();
    }

    /** Written out, from the cheapest part on: what a record brings costs the first caller more than all the rest of its work. */
    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Candidate candidate
                        && from.equals(candidate.from)
                        && value.equals(candidate.value)
                        && assumptions.equals(candidate.assumptions)
                        && working.equals(candidate.working));
    }
}
