package servowright.engine.findings;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.findings.Finding.Area;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.motor.Cogging;
import servowright.engine.prediction.Predictions;
import servowright.engine.prediction.SlotsAndPoles;

/** Detents counted by hand against those that slots and magnets lead to; only where they were counted. */
final class CoggingCountRule implements Rule {
    /** Largest numbers of slots and magnets tried when looking for what would fit. */
    private static final int MOST = 48;

    private static final double LEAST_WINDING_FACTOR = 0.85;
    private static final int SHOWN = 3;

    @Override
    public String id() {
        return "cogging-count";
    }

    @Override
    public Area area() {
        return Area.MOTOR;
    }

    @Override
    public String source() {
        return "symmetry of slots against poles: least common multiple, as in Skaar, Krøvel, Nilssen, ICEM 2006 (recalled)";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        List<Finding> found = new ArrayList<>();
        predictions
                .slots()
                .forEach(
                        (motor, outcome) -> outcome.<Optional<Finding>>fold(a -> judge(motor, a), m -> Optional.empty())
                                .ifPresent(found::add));
        return found;
    }

    private Optional<Finding> judge(String motor, Answer<SlotsAndPoles> answer) {
        SlotsAndPoles s = answer.value();
        if (s.counted().isEmpty()) {
            return Optional.empty();
        }
        int counted = s.counted().getAsInt();
        int expected = s.cogging().periodsPerTurn();
        return Optional.of(Draft.of(this, motor)
                .from(answer)
                .verdict(counted == expected ? Verdict.HOLDS : Verdict.FAILS)
                .says(Phrase.of("{counted} detents counted, {slots} slots and {poles} magnets make {expected}")
                        .with("counted", counted)
                        .with("slots", s.slots())
                        .with("poles", s.poles())
                        .with("expected", expected))
                .because(Phrase.of("the magnets find the teeth alike as often as the least common multiple says"))
                .remedy(remedy(counted))
                .done());
    }

    private static Phrase remedy(int counted) {
        String fitting = Cogging.forDetents(counted, MOST, MOST, LEAST_WINDING_FACTOR).stream()
                .limit(SHOWN)
                .map(c -> c.cogging().slots() + " slots with " + c.cogging().poles() + " magnets")
                .collect(Collectors.joining(", "));
        return fitting.isEmpty()
                ? Phrase.of("count the detents once more, slowly, over one whole turn")
                : Phrase.of("{counted} detents would come from {fitting}: count once more")
                        .with("counted", counted)
                        .with("fitting", fitting);
    }
}
