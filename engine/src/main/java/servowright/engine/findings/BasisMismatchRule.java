package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.BasisStudy;
import servowright.engine.prediction.StatedFigure;

/** Two motor constants apart by a ratio that has a name: one of them has another basis than it says. */
final class BasisMismatchRule implements MotorRule {
    /** How near a figure must come to the bench to be read on another basis: half the closest spacing of the bases. */
    private static final double CLOSES = 0.02;

    @Override
    public String id() {
        return "basis-mismatch";
    }

    @Override
    public String source() {
        return "all constants of a motor are one number, p λ, on different bases; derived from the power balance";
    }

    @Override
    public Optional<Finding> judge(IdentifiedMotor motor, List<StatedFigure> stated) {
        return Contradictions.named(motor, Set.of(MotorParameter.FLUX_LINKAGE)).stream()
                .findFirst()
                .map(c -> Contradictions.begin(this, motor.name(), c, Verdict.FAILS)
                        .says(statement(motor, c))
                        .because(torque(c))
                        .remedy(remedy(c, stated))
                        .done());
    }

    /** In speed per line peak volt where the pole pairs are known: that is how the label is written. */
    private static Phrase statement(IdentifiedMotor motor, Contradiction c) {
        Optional<Integer> pairs = motor.best(MotorParameter.POLE_PAIRS).found().map(p -> (int) Math.round(p.si()));
        return pairs.map(p -> Phrase.of("{a} gives {x} per line peak volt, {b} gives {y}; ratio {ratio} = {factor}")
                        .with("a", c.first().from())
                        .with("x", BasisStudy.lineSpeedConstant(c.first().value(), p), "rpm/V")
                        .with("b", c.second().from())
                        .with("y", BasisStudy.lineSpeedConstant(c.second().value(), p), "rpm/V")
                        .with("ratio", c.ratio())
                        .with("factor", c.factor().orElse("")))
                .orElseGet(() -> Contradictions.statement(c));
    }

    private static Phrase torque(Contradiction c) {
        boolean benchFirst = c.first().value().restsOn().contains(Origin.MEASURED);
        Candidate bench = benchFirst ? c.first() : c.second();
        Candidate label = benchFirst ? c.second() : c.first();
        Known share = bench.value().over(label.value());
        return Phrase.of("torque per ampere is {share} of what {label} as read suggests")
                .with("share", share, "%")
                .with("label", label.from());
    }

    private static Phrase remedy(Contradiction c, List<StatedFigure> stated) {
        String closing = stated.stream()
                .filter(f -> f.stated().isPresent())
                .filter(f ->
                        f.readings().stream().noneMatch(r -> f.stated().get().equals(r.basis()) && r.closes(CLOSES)))
                .flatMap(f -> f.closing(CLOSES).stream()
                        .limit(1)
                        .map(r -> f.what() + " " + f.declared().stated().text() + " closes as " + r.basis()))
                .collect(Collectors.joining("; "));
        if (!closing.isEmpty()) {
            return Phrase.of("{closing}: write it so in machine.yaml").with("closing", closing);
        }
        return Contradictions.measured(c).isPresent()
                ? Phrase.of("trust the bench, and state the figure on the basis that it has")
                : Phrase.of("a spin of the motor with the terminals open tells which of the two is right");
    }
}
