package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;

/** A free shaft driven by a changing current. */
final class AccelerationTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.ACCELERATION;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.ROTOR_INERTIA);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of("Free shaft, motor held. Drive in current control, a sine of {i} to start with; q current and"
                                + " speed logged. The supply current says nothing of the motor's.")
                        .with("i", bench.gentleCurrent(), "A"));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                FIRST_TURN, Phrase.of("A free rotor in current control runs away: limit its speed in the drive."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known current = bench.gentleCurrent();
        return List.of(new Question(
                "acceleration beside the drag",
                Phrase.of("at {i}, q axis").with("i", current, "A"),
                "rad/s2",
                Dimension.ACCELERATION,
                List.of(MotorParameter.ROTOR_INERTIA, MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS),
                List.of(current),
                Question.limits(bench.instruments(), Reads.DRIVE_CURRENT),
                x -> MotorConstants.ofFluxLinkage(x[1], (int) Math.round(x[2])).torqueConstant(CurrentBasis.Q_AXIS)
                        * x[3]
                        / x[0],
                bench.ratios()));
    }
}
