package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.Sought;
import servowright.engine.encoder.Latency;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.SensorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;

/** The offset that serves best at several speeds. */
final class OffsetAtSpeedsTask implements AxisTask {
    /** One step to compute, half a step until the voltage acts (common practice). */
    private static final double STEPS = 1.5;

    @Override
    public TestKind kind() {
        return TestKind.OFFSET_AT_SPEEDS;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.COMMUTATION_DELAY);
    }

    /** Worth it where the delay costs angle: the finding on lost angle says so; the plan keeps it as a choice. */
    @Override
    public boolean needed(AxisBench bench) {
        return false;
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(Phrase.of(
                "Free shaft. At two or more speeds, both ways, the commutation offset that needs the least current or"
                        + " gives the most speed; note speed and offset."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                MotorTask.FIRST_TURN,
                Phrase.of("A wrong offset lets the motor run away: change it in steps of 5°, speed limited."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        return List.of(bench.bounded(
                "delay from angle to voltage",
                Phrase.of("nothing to all of it, as far as the drive makes up for it"),
                "us",
                AxisParameter.COMMUTATION_DELAY,
                delay(bench)));
    }

    private static Outcome<Window> delay(AxisBench bench) {
        Optional<Known> loop = bench.drive(DriveFigure.LOOP_RATE);
        if (loop.isEmpty()) {
            return Outcome.missing("the loop rate of the drive of " + bench.name(), "state it in machine.yaml");
        }
        Latency sensor =
                new Latency(bench.sensor(SensorFigure.DELAY).map(Known::si).orElse(0.0));
        double all = sensor.plus(new Latency(STEPS / loop.get().si())).second();
        return AxisBench.between(0, all / 2, all, Dimension.TIME, "loop rate and sensor as declared");
    }
}
