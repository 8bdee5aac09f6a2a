package servowright.engine.findings;

import java.util.Optional;
import java.util.OptionalDouble;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.encoder.Alignment;
import servowright.engine.encoder.Calibration;
import servowright.engine.known.Phrase;

/** A rotor or a reading that did not follow the field turn for turn. */
final class NotFollowedRule implements SensorBenchRule {
    @Override
    public String id() {
        return "shaft-not-followed";
    }

    @Override
    public String source() {
        return "electrical over mechanical travel is a whole number, within 2 %: definition of the pole pairs";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.evidence().stream()
                .filter(e -> ratio(e).isPresent())
                .findFirst()
                .map(e -> answered(axis, e.test(), ratio(e).getAsDouble()));
    }

    private static OptionalDouble ratio(AngleEvidence seen) {
        if (seen instanceof AngleEvidence.Aligned a && a.outcome() instanceof Alignment.Outcome.NotFollowed not) {
            return OptionalDouble.of(not.ratio());
        }
        if (seen instanceof AngleEvidence.Calibrated c
                && c.calibration() instanceof Calibration.Refused r
                && r.reason() == Calibration.Reason.DOES_NOT_FOLLOW) {
            return OptionalDouble.of(r.figure());
        }
        return OptionalDouble.empty();
    }

    private Finding answered(IdentifiedAxis axis, String test, double ratio) {
        return Draft.of(this, axis.name())
                .verdict(Verdict.FAILS)
                .says(Phrase.of("{test}: the reading does not follow the field, ratio {ratio}")
                        .with("test", test)
                        .with("ratio", Math.rint(1000 * ratio) / 1000))
                .because(Phrase.of(
                        "wrong pole pairs or counts, a magnet that slips or is magnetised along its axis, or too"
                                + " little current"))
                .remedy(Phrase.of("a turn by hand first; then more current, and a motor free of its load"))
                .done();
    }
}
