package servowright.engine.bench;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BenchTest;

/**
 * What one bench test gave.
 *
 * @param values  per parameter its value with working, or why this test cannot give it
 * @param details further figures of the reduction in words and figures: harmonics, imbalance, residual, intercept
 * @param remarks what was found in the recording and how it was handled, and what looks wrong
 * @param curves  what to plot; may be empty
 */
public record TestResult(
        BenchTest test,
        Map<Sought, Outcome<Candidate>> values,
        List<Phrase> details,
        List<Phrase> remarks,
        List<Curve> curves) {
    public TestResult {
        values = Collections.unmodifiableMap(new LinkedHashMap<>(values));
        details = List.copyOf(details);
        remarks = List.copyOf(remarks);
        curves = List.copyOf(curves);
    }

    /** The value of a parameter, or why this test does not give it. */
    public Outcome<Candidate> outcome(Sought what) {
        Outcome<Candidate> outcome = values.get(what);
        return outcome == null
                ? Outcome.missing(what.words() + " from " + test.id(), "another kind of test gives it")
                : outcome;
    }
}
