package servowright.engine.findings;

import java.util.List;
import java.util.Optional;
import servowright.engine.acceptance.Verdict;
import servowright.engine.bench.MotorParameter;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Outcome.Need;
import servowright.engine.known.Phrase;
import servowright.engine.machine.AxisFigure;
import servowright.engine.machine.Sensor;
import servowright.engine.machine.SensorKind;
import servowright.engine.prediction.AxisPrediction;
import servowright.engine.prediction.Predictions;
import servowright.engine.quantity.Quantity;

/** Whether a loaded axis can start with what its sensor knows before anything has moved. */
final class SensorStartRule implements Rule {
    @Override
    public String id() {
        return "start-under-load";
    }

    @Override
    public Finding.Area area() {
        return Finding.Area.MOUNT;
    }

    @Override
    public String source() {
        return "a rotor pulled to a field moves by up to half an electrical turn and needs its torque free (derived)";
    }

    @Override
    public List<Finding> examine(Predictions predictions) {
        return predictions.axes().stream()
                .map(this::judge)
                .flatMap(Optional::stream)
                .toList();
    }

    private Optional<Finding> judge(AxisPrediction axis) {
        Optional<SensorKind> kind = axis.parts().sensor().flatMap(Sensor::kind);
        Optional<Known> pairs = axis.parts()
                .identified()
                .flatMap(m -> m.best(MotorParameter.POLE_PAIRS).found());
        double load = figure(axis, AxisFigure.LOAD_TORQUE);
        boolean hangs = load > figure(axis, AxisFigure.LOAD_FRICTION);
        boolean blind = kind.filter(SensorStartRule::knowsNothingAtRest).isPresent();
        if (!hangs || !blind || pairs.isEmpty()) {
            return Optional.empty();
        }
        Known moves =
                Known.exact(Quantity.of(180 / pairs.get().si(), "deg"), Origin.DERIVED, "half an electrical turn");
        return Optional.of(Draft.of(this, axis.name())
                .verdict(Verdict.FAILS)
                .says(Phrase.of("{kind} tells no angle at rest: the rotor must move by up to {moves} against its load")
                        .with("kind", kind.get().words())
                        .with("moves", moves, "deg"))
                .because(Phrase.of("the load turns the rotor as soon as the brake opens, before the angle is known"))
                .remedy(Phrase.of(
                        "a sensor that is absolute within a turn, or find the angle with the load held by a brake"))
                .needs(List.of(
                        new Need("how the axis finds its angle", "say which brake or stop holds the load meanwhile")))
                .done());
    }

    private static double figure(AxisPrediction axis, AxisFigure which) {
        return axis.parts()
                .axis()
                .figures()
                .known(which)
                .map(k -> Math.abs(k.si()))
                .orElse(0.0);
    }

    private static boolean knowsNothingAtRest(SensorKind kind) {
        return kind == SensorKind.INCREMENTAL || kind == SensorKind.INCREMENTAL_WITH_INDEX || kind == SensorKind.NONE;
    }
}
