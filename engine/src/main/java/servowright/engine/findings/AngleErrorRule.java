package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Axis;
import servowright.engine.prediction.Predictions;

/** The angle error that the bench found, in electrical degrees, if it is not corrected. */
final class AngleErrorRule implements Rule {
    /** cos 3° = 0.999 goes unnoticed; cos 10° = 0.985, and the ripple of the speed is heard. */
    private static final AngleAllowance ALLOWED = AngleAllowance.ofDegrees(3, 10);

    @Override
    public String id() {
        return "angle-error";
    }

    @Override
    public Finding.Area area() {
        return Finding.Area.MOUNT;
    }

    @Override
    public String source() {
        return "common practice, no source: 3 electrical degrees unnoticed, 10 at most; torque falls with the cosine";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.machine().axes().values().stream()
                .map(axis -> judge(predictions, axis))
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Finding> judge(Predictions predictions, Axis axis) {
        IdentifiedAxis sensor = predictions.identified().axis(axis.name());
        Optional<Known> pairs = axis.motor()
                .flatMap(name -> predictions.identified().motor(name))
                .flatMap(
                        (IdentifiedMotor m) -> m.best(MotorParameter.POLE_PAIRS).found());
        return pairs.flatMap(p -> sensor.best(AxisParameter.ANGLE_ERROR)
                .fold(a -> Optional.of(answered(sensor, a, p)), m -> Optional.empty()));
    }

    private Finding answered(IdentifiedAxis axis, Answer<Known> answer, Known pairs) {
        Known error = answer.value().times(pairs.si());
        Phrase statement = Phrase.of(
                        "angle errors up to {error} electrical over the turn, {comfortable} wanted, {most} at most")
                .with("error", error, "deg");
        return ALLOWED.judged(this, axis.name(), error, statement)
                .because(Phrase.of("{mechanical} at the shaft, times the pole pairs")
                        .with("mechanical", answer.value(), "deg"))
                .remedy(Phrase.of("correct the reading by its harmonics or by a table: bench --correction writes both"))
                .wouldSettle("the angle error", "a longer run, or a drag with more current")
                .from(answer)
                .done();
    }
}
