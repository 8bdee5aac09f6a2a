package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Candidate;
import servowright.engine.bench.IdentifiedMotor;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestFigure;
import servowright.engine.motor.PhaseCurrent;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * The angle sensor of an axis before its test.
 *
 * @param made tests of the kind that were made
 */
record AxisBench(AxisPrediction prediction, List<TestResult> made) {
    /** A field at standstill with this share of the drive's continuous current holds a free rotor well. */
    private static final double HOLDING = 0.5;

    String name() {
        return prediction.name();
    }

    SensorKind sensor() {
        return prediction.parts().sensor().flatMap(s -> s.kind()).orElse(SensorKind.NONE);
    }

    boolean onAxisMagnet() {
        return sensor() == SensorKind.ON_AXIS_MAGNETIC;
    }

    Optional<Known> own(AxisFigure figure) {
        return prediction.parts().axis().figures().known(figure);
    }

    Optional<Known> sensor(SensorFigure figure) {
        return prediction.parts().sensor().flatMap(s -> s.figures().known(figure));
    }

    Optional<Known> drive(DriveFigure figure) {
        return prediction.parts().drive().flatMap(d -> d.figures().known(figure));
    }

    Outcome<Known> motor(MotorParameter what) {
        Optional<IdentifiedMotor> motor = prediction.parts().identified();
        return motor.map(m -> m.best(what))
                .orElseGet(() -> Outcome.missing("the motor of " + name(), "name it in axes / " + name()));
    }

    /** Current in the field of the last test, phase peak, as stated; else that of the plan. */
    Optional<Known> fieldCurrent() {
        return statedField().or(this::plannedField);
    }

    /** Empty where no test states it. */
    Optional<Known> statedField() {
        return made.stream()
                .flatMap(t -> t.test().figures().known(TestFigure.FIELD_CURRENT).stream())
                .reduce((first, second) -> second);
    }

    /** Current to put into the field, phase peak; empty while the drive's is not known. */
    Optional<Known> plannedField() {
        return prediction
                .parts()
                .drive()
                .flatMap(d -> d.figures().get(DriveFigure.CONTINUOUS_CURRENT))
                .filter(d -> d.stated().currentBasis().orElse(CurrentBasis.Q_AXIS) != CurrentBasis.SUPPLY)
                .map(d ->
                        d.si() * PhaseCurrent.peakPer(d.stated().currentBasis().orElse(CurrentBasis.Q_AXIS)))
                .map(amp -> MotorBench.condition(Quantity.of(MotorBench.round(HOLDING * amp), "A")));
    }

    /** Bounds that a figure keeps, and what the last test made of it. */
    Expectation bounded(String what, Phrase at, String unit, Sought from, Outcome<Window> window) {
        Optional<TestResult> last = made.stream()
                .filter(t ->
                        t.values().containsKey(from) && t.outcome(from).found().isPresent())
                .reduce((first, second) -> second);
        Optional<Quantity> read =
                last.flatMap(t -> t.outcome(from).found()).map(Candidate::value).map(Known::value);
        return Expectation.held(what, at, unit, last, window, read);
    }

    /** A window between two ends, the expected figure in its middle or as given. */
    static Outcome<Window> between(double low, double expected, double high, Dimension dimension, String from) {
        Known middle = Known.exact(new Quantity(expected, dimension), Origin.DERIVED, from);
        return Outcome.answer(
                new Window(
                        middle, new Quantity(low, dimension), new Quantity(high, dimension), Window.Ends.BOUNDS, from),
                Working.NONE);
    }

    /** What the bench knows of a parameter of the sensor. */
    Optional<Known> now(Sought what) {
        return what instanceof AxisParameter parameter
                ? prediction.parts().sensed().best(parameter).found()
                : Optional.empty();
    }
}
