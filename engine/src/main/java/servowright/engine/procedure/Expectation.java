package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.quantity.Quantity;

/**
 * One reading of a step: where it should lie and, once there, where it does.
 *
 * @param what      what is read: {@code peak voltage between two terminals}
 * @param at        under which conditions; may be empty words
 * @param unit      unit to show it in
 * @param test      id of the test that read it; empty while none did
 * @param window    where it should lie, or what is missing to say so
 * @param read      what was read, as reduced
 * @param agreement the reading against the window, when there are both
 */
public record Expectation(
        String what,
        Phrase at,
        String unit,
        String test,
        Outcome<Window> window,
        Optional<Quantity> read,
        Optional<Agreement> agreement) {
    /** What a test read, held against its window; without a test, the window alone. */
    static Expectation held(
            String what,
            Phrase at,
            String unit,
            Optional<TestResult> test,
            Outcome<Window> window,
            Optional<Quantity> read) {
        return new Expectation(
                what,
                at,
                unit,
                test.map(t -> t.test().id()).orElse(""),
                window,
                read,
                window.found().flatMap(w -> read.map(r -> Agreement.of(w, r, List.of()))));
    }

    /** Whether a reading lies outside its window. */
    public boolean outside() {
        return agreement.filter(a -> !a.inside()).isPresent();
    }
}
