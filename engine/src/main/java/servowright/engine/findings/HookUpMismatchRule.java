package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.StatedFigure;

/** Two resistances or inductances apart by a ratio that has a name: one was contacted otherwise than it says. */
final class HookUpMismatchRule implements MotorRule {
    /** The hook-ups lie 4/3 and more apart; a meter with leads is good to this. */
    private static final double CLOSES = 0.06;

    @Override
    public String id() {
        return "hook-up-mismatch";
    }

    @Override
    public String source() {
        return "two terminals see two phases in series, one against two joined sees one and a half";
    }

    @Override
    public Optional<Finding> judge(IdentifiedMotor motor, List<StatedFigure> stated) {
        return Contradictions.named(motor, Contradictions.CONTACTED).stream()
                .findFirst()
                .map(c -> Contradictions.begin(this, motor.name(), c, Verdict.FAILS)
                        .because(Phrase.of(
                                "a wrong factor here goes into current loop gains, heat and speed reach alike"))
                        .remedy(remedy(c, stated))
                        .done());
    }

    private static Phrase remedy(Contradiction c, List<StatedFigure> stated) {
        String closing = stated.stream()
                .filter(f -> f.what().equals("resistance"))
                .flatMap(f -> f.closing(CLOSES).stream()
                        .limit(1)
                        .filter(r -> !f.stated().equals(Optional.of(r.basis())))
                        .map(r -> f.declared().stated().text() + " closes as [" + r.basis() + "]"))
                .collect(Collectors.joining("; "));
        if (!closing.isEmpty()) {
            return Phrase.of("{closing}: write it so in machine.yaml").with("closing", closing);
        }
        return Contradictions.measured(c).isPresent()
                ? Phrase.of("say how the figure was contacted: [two terminals], [one against two] or [phase]")
                : Phrase.of("read it once more between two terminals, four-wire, and say so");
    }
}
