package servowright.engine.bench;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import servowright.engine.known.Known;

/** All coast-downs of one motor: a run with a known inertia added is held against one without. */
final class CoastDowns {
    private CoastDowns() {}

    /**
     * Reduces them together.
     *
     * @param declared inertia of the rotor from label or data sheet
     * @return results in the order of the tests
     */
    static List<TestResult> of(List<CoastDownTest> tests, Optional<Known> declared) {
        Map<CoastDownTest, Known> found = new LinkedHashMap<>();
        Optional<CoastDownTest> own =
                tests.stream().filter(t -> t.added().isEmpty()).findFirst();
        for (CoastDownTest test : tests) {
            own.filter(o -> o != test).flatMap(test::inertia).ifPresent(j -> found.put(test, j));
        }
        Optional<Known> measured = found.values().stream().findFirst();
        List<TestResult> results = new ArrayList<>();
        for (CoastDownTest test : tests) {
            Optional<Known> bare = measured.or(() -> declared);
            Optional<Known> all = test.added().map(a -> bare.map(a::plus)).orElse(bare);
            results.add(test.result(test.stated().or(() -> all)));
        }
        return results;
    }
}
