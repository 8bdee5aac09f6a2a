package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.AxisParameter;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;

/** The shaft runs out on its own while the sensor is read. */
final class FreeRunTask implements AxisTask {
    /** With more, cogging lies above the orders that a sensor errs in, and a slow drag tells as much. */
    private static final double FEW_POLE_PAIRS = 2;

    @Override
    public TestKind kind() {
        return TestKind.FREE_RUN;
    }

    @Override
    public List<Sought> settles() {
        return List.of(AxisParameter.ANGLE_ERROR);
    }

    @Override
    public boolean suits(AxisBench bench) {
        return bench.onAxisMagnet();
    }

    @Override
    public boolean needed(AxisBench bench) {
        return bench.motor(MotorParameter.POLE_PAIRS)
                .found()
                .map(Known::si)
                .filter(p -> p <= FEW_POLE_PAIRS)
                .isPresent();
    }

    @Override
    public List<Phrase> hookUp(AxisBench bench) {
        return List.of(
                Phrase.of("No load, shaft upright and free. Brought to speed by its drive, then the bridge off; the"
                        + " reading logged with its times over twenty turns or more. Again at half and at twice the speed: what the"
                        + " speed truly ripples shrinks, what the sensor errs stays."));
    }

    @Override
    public List<Phrase> cautions(AxisBench bench) {
        return List.of(
                MotorTask.FIRST_TURN,
                Phrase.of("A shaft that runs out is not braked by anything: nobody reaches in until it stands."));
    }

    @Override
    public List<Expectation> expectations(AxisBench bench) {
        return List.of(SlowDragTask.error(bench));
    }
}
