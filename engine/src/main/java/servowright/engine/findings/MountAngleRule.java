package servowright.engine.findings;

import java.util.Optional;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Mount;

/** Electrical angle error that the stated offset makes with a tilt of one degree: the pair that matters most. */
final class MountAngleRule implements MountRule {
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(3, 10);

    @Override
    public String id() {
        return "tilt-times-offset";
    }

    @Override
    public String source() {
        return "second-order expansion of the field (derived); 10 electrical degrees at most, 3 unnoticed: common practice";
    }

    @Override
    public Optional<Finding> judge(AxisPrediction axis, Answer<Mount> mount) {
        return mount.value().tiltError().map(error -> answered(axis, mount, error));
    }

    private Finding answered(AxisPrediction axis, Answer<Mount> mount, Known error) {
        Phrase statement = Phrase.of(
                        "the sensor offset with 1 deg of tilt makes {error} electrical, {comfortable} wanted")
                .with("error", error, "deg");
        return ALLOWED.judged(this, axis.name(), error, statement)
                .because(Phrase.of("a tilted sensor beside the axis sees the field along the shaft once per turn"))
                .remedy(Phrase.of("pins or a shoulder instead of screws alone, a larger magnet, or a calibration"))
                .wouldSettle("the offset of the sensor", "a harmonic fit of the angle error over one turn")
                .from(mount)
                .done();
    }
}
