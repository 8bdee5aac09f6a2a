package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.SensorKind;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;

/** The sensor beside another one that is trusted. */
final class ReferenceRunTask implements AxisTask {
    /** Limits of a declared delay (common practice, no source). */
    private static final double DECLARED_HALF_WIDTH = 0.10;

    @Override
    public TestKind kind() {
        return TestKind.REFERENCE_RUN;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.ANGLE_ERROR, AxisParameter.ANGLE_DELAY);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.sensor() != SensorKind.HALL_TRIPLE;
    }

    /** A second sensor is seldom at hand: what a slow drag or a free run tells comes first. */
    @Override
    public boolean needed(AxisBench bench) {
        return false;
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(
                Phrase.of("A second angle sensor that is trusted, coupled to the same shaft without play; both readings"
                        + " logged at the same instants. Steady speed, ten turns forwards and ten back; then at another speed, which"
                        + " tells delay from play."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                MotorTask.FIRST_TURN,
                Phrase.of("A stiff coupling out of line breaks a sensor: let it float or align it."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        Expectation delay = bench.bounded(
                "delay of the reading",
                Phrase.of("both directions, no play"),
                "us",
                AxisParameter.ANGLE_DELAY,
                delay(bench));
        return bench.onAxisMagnet() ? List.of(SlowDragTask.error(bench), delay) : List.of(delay);
    }

    /** That of the sensor, and up to a step of the loop until its number is taken. */
    private static Outcome<Window> delay(AxisBench bench) {
        Optional<Known> loop = bench.drive(DriveFigure.LOOP_RATE);
        Optional<Known> sensor = bench.sensor(SensorFigure.DELAY);
        if (loop.isEmpty() || sensor.isEmpty()) {
            return Outcome.missing(
                    loop.isEmpty()
                            ? "the loop rate of the drive of " + bench.name()
                            : "the delay of the sensor of " + bench.name(),
                    "state it in machine.yaml");
        }
        double own = sensor.get().si();
        double step = 1 / loop.get().si();
        return AxisBench.between(
                (1 - DECLARED_HALF_WIDTH) * own,
                own + step / 2,
                (1 + DECLARED_HALF_WIDTH) * own + step,
                Dimension.TIME,
                "sensor and loop rate as declared");
    }
}
