package servowright.engine.procedure;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.MotorConstants;
import servowright.engine.quantity.CurrentBasis;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Held at several currents while a lever presses on a scale. */
final class TorqueStairsTask implements MotorTask {
    private static final double ARM_METRE = 0.15;

    @Override
    public TestKind kind() {
        return TestKind.TORQUE_STAIRS;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.FLUX_LINKAGE);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of("Lever of {arm} on the shaft, level on a scale that reads zero with the drive off. Current in"
                                + " six steps up to {i}, a second each, up and down.")
                        .with("arm", arm(bench), "mm")
                        .with("i", highest(bench), "A"));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                Phrase.of("A lever under torque strikes when it slips: stop it on both sides, stand aside."),
                Phrase.of("A motor at standstill heats one phase most: seconds at a time."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known current = highest(bench);
        return List.of(new Question(
                "force on the scale",
                Phrase.of("at {i}, q axis, arm of {arm}")
                        .with("i", current, "A")
                        .with("arm", arm(bench), "mm"),
                "N",
                Dimension.FORCE,
                List.of(MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS),
                List.of(current, arm(bench)),
                Question.limits(bench.instruments(), Reads.FORCE, Reads.DRIVE_CURRENT),
                x -> MotorConstants.ofFluxLinkage(x[0], (int) Math.round(x[1])).torqueConstant(CurrentBasis.Q_AXIS)
                        * x[2]
                        / x[3],
                bench.ratios()));
    }

    private static Known arm(MotorBench bench) {
        return bench.stated(TestFigure.ARM)
                .orElseGet(() -> MotorBench.condition(new Quantity(ARM_METRE, Dimension.LENGTH)));
    }

    private static Known highest(MotorBench bench) {
        Optional<Known> read = bench.test().stream()
                .flatMap(t -> t.readings().stream())
                .map(Reading::figures)
                .flatMap(f -> f.known(ReadingFigure.CURRENT).stream())
                .max(Comparator.comparingDouble(Known::si));
        return read.map(k -> MotorBench.condition(new Quantity(k.si(), Dimension.CURRENT)))
                .orElseGet(() -> bench.current(1));
    }
}
