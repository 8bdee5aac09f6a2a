package servowright.engine.procedure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;

/**
 * One step of the bench plan.
 *
 * @param number       counted through the plan
 * @param subject      name of the motor or axis
 * @param hookUp       how it is set up, sentence by sentence
 * @param cautions     what can hurt in it, the hazard first
 * @param expectations what it should read and what it did
 * @param settles      what it tells, and how well that is known now
 * @param stakes       what hangs on that, the heaviest first
 * @param tests        ids of the tests made
 */
public record Step(
        int number,
        TestKind kind,
        String subject,
        State state,
        List<Phrase> hookUp,
        List<Phrase> cautions,
        List<Expectation> expectations,
        List<Settles> settles,
        List<Stake> stakes,
        List<String> tests) {
    /** How a step stands. */
    public enum State {
        /** Made, every reading within its window or without one. */
        AGREES("made, as expected"),
        /** Made, a reading outside its window. */
        DIFFERS("made, outside"),
        /** Made without giving what it should. */
        REFUSED("made, gave nothing"),
        /** Worth doing. */
        WORTH("worth doing"),
        /** Tells only what is known already, or nothing hangs on it. */
        SPARE("can wait");

        private final String words;

        State(String words) {
            this.words = words;
        }

        /** As it is shown. */
        public String words() {
            return words;
        }
    }

    /**
     * Something a step tells.
     *
     * @param now how well it is known
     */
    public record Settles(Sought what, Optional<Known> now) {}

    public Step {
        hookUp = List.copyOf(hookUp);
        cautions = List.copyOf(cautions);
        expectations = List.copyOf(expectations);
        settles = List.copyOf(settles);
        stakes = stakes.stream()
                .sorted(Comparator.comparingDouble((Stake s) -> -s.weight()).thenComparing(Stake::finding))
                .toList();
        tests = List.copyOf(tests);
    }

    /** The weight of what hangs on it; 0 for nothing. */
    public double weight() {
        return stakes.stream().mapToDouble(Stake::weight).max().orElse(0);
    }

    Step numbered(int n) {
        return new Step(n, kind, subject, state, hookUp, cautions, expectations, settles, stakes, tests);
    }
}
