package servowright.engine.known;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** The answer to a question, or what is missing for one. Missing is an ordinary result: on day one there is a label only. */
public sealed interface Outcome<T> {
    /**
     * An answer with how it came about.
     *
     * @param value       the answer
     * @param working     how it came about
     * @param assumptions what was taken without being known; every view prints it
     */
    record Answer<T>(T value, Working working, List<Phrase> assumptions) implements Outcome<T> {
        public Answer {
            assumptions = List.copyOf(assumptions);
        }
    }

    /**
     * No answer yet.
     *
     * @param needs what would give one, most useful first; never empty
     */
    record Missing<T>(List<Need> needs) implements Outcome<T> {
        public Missing {
            needs = List.copyOf(needs);
            if (needs.isEmpty()) {
                throw new IllegalArgumentException("an answer that is missing needs at least one thing");
            }
        }

        /** The same needs, for a question that wanted another type. */
        public <R> Missing<R> forAnother() {
            return new Missing<>(needs);
        }
    }

    /**
     * Something that would settle a question.
     *
     * @param what   the figure, in words: {@code rotor inertia of hub}
     * @param settle how to get it: a measurement or a line in the machine's files
     */
    record Need(String what, String settle) {
        @Override
        public int hashCode() {
            return what.hashCode();
        }

        @Override
        public boolean equals(@Nullable Object other) {
            return this == other
                    || (other instanceof Need need && what.equals(need.what) && settle.equals(need.settle));
        }
    }

    static <T> Outcome<T> answer(T value, Working working) {
        return new Answer<>(value, working, List.of());
    }

    static <T> Outcome<T> missing(String what, String settle) {
        return new Missing<>(List.of(new Need(what, settle)));
    }

    /** Goes on with whichever it is. */
    default <R> R fold(Function<Answer<T>, R> answer, Function<Missing<T>, R> missing) {
        return this instanceof Answer<T> a ? answer.apply(a) : missing.apply((Missing<T>) this);
    }

    /** The answer alone, if there is one. */
    default Optional<T> found() {
        return fold(a -> Optional.of(a.value()), m -> Optional.empty());
    }
}
