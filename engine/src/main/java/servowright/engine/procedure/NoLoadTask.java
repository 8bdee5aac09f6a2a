package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.motion.CoastDown;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;

/** Turned by its drive without load. */
final class NoLoadTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.NO_LOAD;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.DRY_DRAG, MotorParameter.VISCOUS_DRAG);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                                "Free shaft, motor held, turned by its drive at five or more steady speeds up to {n}, both ways."
                                        + " Find the commutation offset first.")
                        .with("n", bench.drivenSpeed(), "rpm"),
                Phrase.of("Read the q current that the drive shows at each, mean of ten seconds."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(FIRST_TURN);
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known speed = bench.drivenSpeed();
        return List.of(new Question(
                "q current, mean of both ways",
                Phrase.of("at {n}").with("n", speed, "rpm"),
                "A",
                Dimension.CURRENT,
                List.of(
                        MotorParameter.DRY_DRAG,
                        MotorParameter.VISCOUS_DRAG,
                        MotorParameter.FLUX_LINKAGE,
                        MotorParameter.POLE_PAIRS),
                List.of(speed),
                Question.limits(bench.instruments(), Reads.DRIVE_CURRENT),
                x -> drag(x[0], x[1], x[4])
                        / MotorConstants.ofFluxLinkage(x[2], (int) Math.round(x[3]))
                                .torqueConstant(CurrentBasis.Q_AXIS),
                bench.ratios()));
    }

    /** Drag at a steady speed; the inertia has no part in it. */
    static double drag(double dry, double viscous, double radPerS) {
        return new CoastDown(1, dry, viscous, 0).dragNewtonMetre(radPerS);
    }
}
