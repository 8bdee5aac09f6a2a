package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.Contradiction;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;

/** Contradictions of a motor, sorted by which rule speaks about them. */
final class Contradictions {
    /** Parameters whose contradiction may come from how the winding was contacted. */
    static final Set<MotorParameter> CONTACTED =
            Set.of(MotorParameter.PHASE_RESISTANCE, MotorParameter.D_INDUCTANCE, MotorParameter.Q_INDUCTANCE);

    private Contradictions() {}

    /** Contradictions whose ratio has a name and whose parameter is among those asked for; the largest ratio first. */
    static List<Contradiction> named(IdentifiedMotor motor, Set<MotorParameter> parameters) {
        return sorted(motor, c -> c.factor().isPresent() && parameters.contains(c.parameter()));
    }

    /** Contradictions that no other rule explains. */
    static List<Contradiction> unexplained(IdentifiedMotor motor) {
        return sorted(
                motor,
                c -> c.parameter() != MotorParameter.POLE_PAIRS
                        && (c.factor().isEmpty()
                                || !(c.parameter() == MotorParameter.FLUX_LINKAGE
                                        || CONTACTED.contains(c.parameter()))));
    }

    private static List<Contradiction> sorted(IdentifiedMotor motor, Predicate<Contradiction> which) {
        return motor.contradictions().stream()
                .filter(which)
                .sorted(Comparator.comparingDouble(c -> -size(c)))
                .toList();
    }

    /** How far apart the two values are, as a share. */
    static double size(Contradiction c) {
        return Math.abs(Math.log(c.ratio().si()));
    }

    /** Both values and their ratio, in the parameter's own unit. */
    static Phrase statement(Contradiction c) {
        String name = c.factor().map(f -> " = " + f).orElse("");
        return Phrase.of("{what}: {a} says {x}, {b} says {y}; ratio {ratio}" + name)
                .with("what", c.parameter().words())
                .with("a", c.first().from())
                .with("x", c.first().value(), c.parameter().unit())
                .with("b", c.second().from())
                .with("y", c.second().value(), c.parameter().unit())
                .with("ratio", c.ratio());
    }

    /** Takes over both workings. */
    static Draft begin(Rule rule, String motor, Contradiction c, Verdict verdict) {
        return Draft.of(rule, motor)
                .verdict(verdict)
                .says(statement(c))
                .worked(c.first().working().then(c.second().working()), List.of());
    }

    /** Whether one of the two was measured, so that the bench has decided. */
    static Optional<String> measured(Contradiction c) {
        return List.of(c.first(), c.second()).stream()
                .filter(x -> x.value().restsOn().contains(Origin.MEASURED))
                .map(Candidate::from)
                .findFirst();
    }
}
