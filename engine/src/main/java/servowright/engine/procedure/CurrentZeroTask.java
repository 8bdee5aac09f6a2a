package servowright.engine.procedure;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.bench.SensingParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Phrase;
import servowright.engine.machine.DriveFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Current sensors read with the bridge off. */
final class CurrentZeroTask implements MotorTask {
    /** Offsets within this share of the peak current are usual (common practice, no source). */
    private static final double USUAL = 0.01;

    @Override
    public TestKind kind() {
        return TestKind.CURRENT_ZERO;
    }

    @Override
    public List<Sought> settles() {
        return List.of(SensingParameter.OFFSET_A, SensingParameter.OFFSET_B, SensingParameter.OFFSET_C);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of("Motor connected and at rest, bridge off. The drive logs its phase currents for a second."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(Phrase.of("A drive with supply can start by itself: shaft free, nobody's hands near."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        List<Accuracy> usual = bench
                .drive()
                .flatMap(d -> d.figures().known(DriveFigure.PEAK_CURRENT))
                .map(k -> new Accuracy(0, new Quantity(USUAL * k.si(), Dimension.CURRENT)))
                .stream()
                .toList();
        return usual.isEmpty()
                ? List.of()
                : Stream.of(SensingParameter.OFFSET_A, SensingParameter.OFFSET_B, SensingParameter.OFFSET_C)
                        .map(offset -> zero(offset, usual))
                        .toList();
    }

    private static Question zero(SensingParameter offset, List<Accuracy> usual) {
        return new Question(
                offset.words(),
                Phrase.of("bridge off"),
                "mA",
                Dimension.CURRENT,
                List.of(offset),
                List.of(),
                usual,
                x -> x[0],
                List.of());
    }
}
