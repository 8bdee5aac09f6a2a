package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.AngleEvidence;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.encoder.Calibration;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;

/** A run that saw too little of the turn: offset and first harmonic look alike there, so there is no fit. */
final class TravelTooSmallRule implements SensorBenchRule {
    @Override
    public String id() {
        return "travel-too-small";
    }

    @Override
    public String source() {
        return "condition number of a constant and the harmonics over the part seen: 1.5 for a turn, 5 for 300 degrees,"
                + " 42 for 240, 670 for 180 (recomputed); 10 at most";
    }

    @Override
    public Optional<Finding> judge(IdentifiedAxis axis) {
        return axis.saw(AngleEvidence.Calibrated.class)
                .filter(c -> c.calibration() instanceof Calibration.Refused r
                        && r.reason() == Calibration.Reason.TRAVEL_TOO_SMALL)
                .findFirst()
                .map(c -> answered(axis, c.test(), ((Calibration.Refused) c.calibration()).figure()));
    }

    private Finding answered(IdentifiedAxis axis, String test, double condition) {
        return Draft.of(this, axis.name())
                .verdict(Verdict.NOT_SHOWN)
                .says(Phrase.of(
                                "{test} saw too little of the turn to tell harmonics apart: condition number {condition},"
                                        + " {most} at most")
                        .with("test", test)
                        .with("condition", Math.rint(condition))
                        .with("most", 10))
                .because(Phrase.of("over a part of a turn an offset and a slow harmonic look alike"))
                .remedy(Phrase.of("calibrate before the joint is closed, over a whole turn; else fit fewer orders"))
                .needs(List.of(new Need(
                        "a whole turn of " + axis.name(), "repeat over at least 300 degrees, or state orders: 2")))
                .done();
    }
}
