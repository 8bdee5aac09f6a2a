package servowright.engine.findings;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.encoder.Angles;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.known.Source;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Commutation offsets of one axis from different tests. */
final class OffsetsDisagreeRule implements SensorBenchRule {
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(3, 10);

    @Override
    public String id() {
        return "offsets-disagree";
    }

    @Override
    public String source() {
        return "common practice, no source: 3 electrical degrees go unnoticed, 10 cost 1.5 % of the torque";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        List<Candidate> all = axis.candidates().getOrDefault(AxisParameter.COMMUTATION_OFFSET, List.of());
        return all.stream()
                .skip(1)
                .max(Comparator.comparingDouble(c -> apart(all.get(0), c)))
                .map(other -> answered(axis, all.get(0), other));
    }

    private static double apart(Candidate best, Candidate other) {
        return Math.abs(Angles.wrapped(other.value().si() - best.value().si()));
    }

    private Finding answered(IdentifiedAxis axis, Candidate best, Candidate other) {
        Known apart = Known.of(
                new Quantity(apart(best, other), Dimension.ANGLE),
                Math.hypot(best.value().standardUncertainty(), other.value().standardUncertainty()),
                Source.of(axis.name() + " two offsets"),
                Origin.DERIVED,
                best.from());
        Phrase statement = Phrase.of(
                        "commutation offsets of {one} and {other} differ by {apart} electrical, {comfortable} wanted")
                .with("one", best.from())
                .with("other", other.from())
                .with("apart", apart, "deg");
        return ALLOWED.judged(this, axis.name(), apart, statement)
                .because(Phrase.of("board or magnet moved between the tests, or one was held back by load or friction"))
                .remedy(Phrase.of("repeat the offset on the free motor; use none of them until two agree"))
                .wouldSettle("the difference of the offsets", "more stops, or more current")
                .done();
    }
}
