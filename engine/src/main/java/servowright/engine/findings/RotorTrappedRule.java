package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.encoder.Alignment;
import servowright.engine.known.Phrase;

/** A rotor that sat half an electrical turn from the field and did not move: the stop looks like any other. */
final class RotorTrappedRule implements SensorBenchRule {
    @Override
    public String id() {
        return "rotor-trapped";
    }

    @Override
    public String source() {
        return "torque of a standing field is zero at 0 and at 180 electrical degrees";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.saw(AngleEvidence.Aligned.class)
                .filter(a -> a.outcome() instanceof Alignment.Outcome.Found)
                .reduce((first, second) -> second)
                .map(a -> answered(axis, a.test(), ((Alignment.Outcome.Found) a.outcome()).alignment()));
    }

    private Finding answered(IdentifiedAxis axis, String test, Alignment alignment) {
        int trapped = alignment.trapped().size();
        return Draft.of(this, axis.name())
                .verdict(trapped == 0 ? Verdict.HOLDS : Verdict.TIGHT)
                .says(Phrase.of("{n} stops of {test} lie half an electrical turn off")
                        .with("n", trapped)
                        .with("test", test))
                .because(Phrase.of(
                        "there the field pulls with no torque; an axis that aligns itself in one step can stay"
                                + " there, and then runs away"))
                .remedy(Phrase.of("align in two steps: first to 90 electrical degrees, then to 0"))
                .done();
    }
}
