package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.TestResult;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.Predictions;

/** A bench test that gave nothing, and why. */
final class TestRefusedRule implements Rule {
    @Override
    public String id() {
        return "test-refused";
    }

    @Override
    public Area area() {
        return Area.BENCH;
    }

    @Override
    public String source() {
        return "the bench's own reasons, said in the test's result";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.identified().motors().keySet().stream()
                .map(motor -> judge(
                        motor,
                        predictions.identified().tests().stream()
                                .filter(t -> t.test().motor().equals(motor))
                                .filter(TestRefusedRule::refused)
                                .toList()))
                .flatMap(Optional::stream)
                .toList();
    }

    private static boolean refused(TestResult test) {
        return !test.values().isEmpty()
                && test.values().values().stream().allMatch(v -> v.found().isEmpty());
    }

    private Optional<Finding> judge(String motor, List<TestResult> refused) {
        if (refused.isEmpty()) {
            return Optional.empty();
        }
        List<Need> needs = refused.stream()
                .flatMap(t -> t.values().values().stream())
                .flatMap(TestRefusedRule::needs)
                .distinct()
                .toList();
        String tests = refused.stream().map(t -> t.test().id()).collect(Collectors.joining(", "));
        return Optional.of(Draft.of(this, motor)
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of("{tests} gave nothing: {what}")
                        .with("tests", tests)
                        .with("what", needs.get(0).what()))
                .remedy(Phrase.of("{settle}").with("settle", needs.get(0).settle()))
                .needs(needs)
                .done());
    }

    private static Stream<Need> needs(Outcome<Candidate> value) {
        return value instanceof Missing<Candidate> m ? m.needs().stream() : Stream.of();
    }
}
