package servowright.engine.procedure;

import java.util.Optional;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** How a reading is found in what a test gave. */
interface Told {
    /** The reading; empty where the test does not say. */
    Optional<Quantity> in(TestResult test);

    /** A value that the test gave, if it is of that dimension. */
    static Told value(Sought what, Dimension dimension) {
        return test ->
                found(test, what).map(Known::value).filter(q -> q.dimension().equals(dimension));
    }

    /** A figure of that name among the details of the test. */
    static Told figure(String name) {
        return test -> test.details().stream()
                .map(detail -> detail.figures().get(name))
                .filter(Phrase.Figure.class::isInstance)
                .map(part -> ((Phrase.Figure) part).value().value())
                .findFirst();
    }

    /** What a test found of a parameter. */
    static Optional<Known> found(TestResult test, Sought what) {
        return test.values().containsKey(what) ? test.outcome(what).found().map(Candidate::value) : Optional.empty();
    }
}
