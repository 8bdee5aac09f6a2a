package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.motion.CoastDown;
import servowright.engine.quantity.Dimension;

/** Brought to speed and left to itself. */
final class CoastDownTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.COAST_DOWN;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.DRY_DRAG, MotorParameter.VISCOUS_DRAG, MotorParameter.ROTOR_INERTIA);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                                "Free shaft, motor held. Brought to {n} by its drive, then the bridge switched off, not braked;"
                                        + " speed logged to standstill.")
                        .with("n", bench.drivenSpeed(), "rpm"),
                Phrase.of("Again with a disc of known inertia, about that of the rotor: the two give the inertia."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                FIRST_TURN, Phrase.of("A disc that comes loose flies: bolt it on, guard it, stand out of its plane."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known speed = bench.drivenSpeed();
        return List.of(new Question(
                "time down to half the speed",
                Phrase.of("from {n}, no disc").with("n", speed, "rpm"),
                "s",
                Dimension.TIME,
                List.of(MotorParameter.DRY_DRAG, MotorParameter.VISCOUS_DRAG, MotorParameter.ROTOR_INERTIA),
                List.of(speed),
                Question.limits(bench.instruments(), Reads.SPEED),
                CoastDownTask::halving,
                bench.ratios()));
    }

    private static double halving(double... x) {
        CoastDown run = new CoastDown(x[2], x[0], x[1], 0);
        return run.stopSecond(x[3]).orElse(Double.NaN)
                - run.stopSecond(x[3] / 2).orElse(Double.NaN);
    }
}
