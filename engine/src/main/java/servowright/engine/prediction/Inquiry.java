package servowright.engine.prediction;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.known.Step;
import servowright.engine.known.Working;
import servowright.engine.quantity.Quantity;

/**
 * One question while it gathers what it needs: figures found, figures missing, and what had to be assumed. Everything is
 * asked for first, so that all that is missing is named at once; only then is anything computed.
 */
final class Inquiry {
    private final Set<Need> needs = new LinkedHashSet<>();
    private final Set<Phrase> assumptions = new LinkedHashSet<>();
    private final Set<Step> earlier = new LinkedHashSet<>();
    private final Working.Sheet sheet = Working.begin();

    /** Asks for a figure; the supplier may only be used inside {@link #answer}. */
    <T> Supplier<T> take(Outcome<T> outcome) {
        if (outcome instanceof Answer<T> a) {
            earlier.addAll(a.working().steps());
            assumptions.addAll(a.assumptions());
            return a::value;
        }
        needs.addAll(((Missing<T>) outcome).needs());
        return () -> {
            throw new IllegalStateException("a figure that is missing was used: " + needs);
        };
    }

    /** A figure, or what is taken in its place and why. */
    Known orAssume(Optional<Known> stated, Quantity fallback, Phrase why) {
        if (stated.isPresent()) {
            return stated.get();
        }
        assumptions.add(why);
        return Known.exact(fallback, Origin.ASSUMED, "assumed");
    }

    void assume(Phrase what) {
        assumptions.add(what);
    }

    /** Where the lines of the computation are written down. */
    Working.Sheet sheet() {
        return sheet;
    }

    /** Computes if nothing is missing. */
    <T> Outcome<T> answer(Supplier<T> compute) {
        if (!needs.isEmpty()) {
            return new Missing<>(List.copyOf(needs));
        }
        T value = compute.get();
        earlier.addAll(sheet.end().steps());
        return new Answer<>(value, new Working(List.copyOf(earlier)), List.copyOf(assumptions));
    }
}
