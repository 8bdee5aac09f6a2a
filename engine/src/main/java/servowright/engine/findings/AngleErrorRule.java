package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Judge;
import servowright.engine.acceptance.Judgement;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.IdentifiedAxis;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome.Answer;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Axis;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** The angle error that the bench found, in electrical degrees, if it is not corrected. */
final class AngleErrorRule implements Rule {
    /** cos 10° = 0.985, and the ripple of the speed is heard. */
    private static final Known MOST = Known.exact(Quantity.of(10, "deg"), Origin.ASSUMED, "common practice");

    private static final Known COMFORTABLE = Known.exact(Quantity.of(3, "deg"), Origin.ASSUMED, "common practice");

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
        Judgement judgement = Judge.atMost(error, MOST, COMFORTABLE);
        return Draft.of(this, axis.name())
                .verdict(judgement.verdict())
                .says(Phrase.of(
                                "angle errors up to {error} electrical over the turn, {comfortable} wanted, {most} at most")
                        .with("error", error, "deg")
                        .with("comfortable", COMFORTABLE, "deg")
                        .with("most", MOST, "deg"))
                .because(Phrase.of("{mechanical} at the shaft, times the pole pairs")
                        .with("mechanical", answer.value(), "deg"))
                .remedy(Phrase.of("correct the reading by its harmonics or by a table: bench --correction writes both"))
                .wouldSettle("the angle error", "a longer run, or a drag with more current")
                .atMost(error, MOST, "deg")
                .from(answer)
                .done();
    }
}
