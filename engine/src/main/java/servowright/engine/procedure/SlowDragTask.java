package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.prediction.Mount;
import servowright.engine.quantity.Dimension;

/** The rotor dragged by a slowly turning field, forwards and back. */
final class SlowDragTask implements AxisTask {
    @Override
    public TestKind kind() {
        return TestKind.SLOW_DRAG;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.ANGLE_ERROR, AxisParameter.COMMUTATION_OFFSET, AxisParameter.FRICTION_LAG);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.onAxisMagnet();
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        Phrase field = bench.plannedField()
                .map(i -> Phrase.of(
                                "No load on the shaft. A field of {i}, phase peak, turned slowly, a mechanical turn in half a"
                                        + " minute, forwards and back; angle of the field and reading logged together.")
                        .with("i", i, "A"))
                .orElseGet(() -> Phrase.of(
                        "No load on the shaft. A field turned slowly, a mechanical turn in half a minute, forwards and back;"
                                + " angle of the field and reading logged together."));
        return List.of(field);
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                Phrase.of("A dragged shaft does not stop at an obstacle until the current does: hands off."),
                Phrase.of("A field at low speed heats the winding as a standing one: watch its temperature."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        return List.of(error(bench), AlignmentTask.lag(bench));
    }

    /** However it is measured, the mount explains no more. */
    static Expectation error(AxisBench bench) {
        return bench.bounded(
                "largest angle error over a turn",
                Phrase.of("mechanical; tilt up to 1°"),
                "deg",
                AxisParameter.ANGLE_ERROR,
                window(bench));
    }

    /** What the stated offset of the sensor and a degree of tilt make of it at most; other errors of the sensor come on top. */
    private static Outcome<Window> window(AxisBench bench) {
        Optional<Mount> mount = bench.prediction().mount().flatMap(Outcome::found);
        Optional<Known> offset = mount.flatMap(Mount::offsetError);
        Optional<Known> tilt = mount.flatMap(Mount::tiltError);
        Optional<Known> pairs = bench.motor(MotorParameter.POLE_PAIRS).found();
        if (offset.isEmpty() || tilt.isEmpty() || pairs.isEmpty()) {
            return Outcome.missing(
                    "the offset of the sensor from the axis of " + bench.name(),
                    "state magnet, gap and sensor_offset; the reading tells what they come to");
        }
        double most = (offset.get().si() + tilt.get().si()) / pairs.get().si();
        return AxisBench.between(0, most / 2, most, Dimension.ANGLE, "magnet, gap and offset as declared");
    }
}
