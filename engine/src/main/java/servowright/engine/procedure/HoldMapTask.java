package servowright.engine.procedure;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.MotorFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.Cogging;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;

/** Held at many angles all around: cogging. */
final class HoldMapTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.HOLD_MAP;
    }

    /** Cogging is run through or held through. */
    @Override
    public Set<TestKind> kinds() {
        return EnumSet.of(TestKind.HOLD_MAP, TestKind.COGGING_RUN);
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.COGGING_TORQUE);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(Phrase.of(
                "Free shaft, motor held. Position control stops every degree or closer, once around and back; angle"
                        + " and q current logged at rest. Count the detents of one turn by hand beforehand."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(FIRST_TURN);
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        List<Question> all = new ArrayList<>();
        detents(bench).ifPresent(all::add);
        all.add(new Question(
                "q current over a turn, largest less smallest, one way",
                Phrase.of("free shaft"),
                "A",
                Dimension.CURRENT,
                List.of(MotorParameter.COGGING_TORQUE, MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS),
                List.of(),
                Question.limits(bench.instruments(), Reads.DRIVE_CURRENT),
                x -> x[0]
                        / MotorConstants.ofFluxLinkage(x[1], (int) Math.round(x[2]))
                                .torqueConstant(CurrentBasis.Q_AXIS),
                bench.ratios()));
        return all;
    }

    private static Optional<Question> detents(MotorBench bench) {
        Optional<Known> slots = bench.motor().figures().known(MotorFigure.SLOTS);
        return slots.map(s -> new Question(
                "detents in one turn",
                Phrase.of("counted by hand"),
                "",
                Dimension.NUMBER,
                List.of(MotorParameter.POLE_PAIRS),
                List.of(s),
                List.of(),
                x -> Cogging.of((int) Math.round(x[1]), 2 * (int) Math.round(x[0]))
                        .periodsPerTurn(),
                bench.ratios()));
    }
}
