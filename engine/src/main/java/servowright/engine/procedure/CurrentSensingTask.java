package servowright.engine.procedure;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.SensingParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Dimension;

/** Phase currents recorded while the motor turns. */
final class CurrentSensingTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.CURRENT_SENSING;
    }

    @Override
    public List<Sought> settles() {
        return List.of(SensingParameter.GAIN_B, SensingParameter.GAIN_C);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(Phrase.of(
                        "Free shaft, motor held, turned slowly and steadily under {i}; the drive logs its phase currents over"
                                + " twenty electrical turns.")
                .with("i", bench.gentleCurrent(), "A"));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(FIRST_TURN);
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        return Stream.of(SensingParameter.GAIN_B, SensingParameter.GAIN_C)
                .map(gain -> new Question(
                        gain.words(),
                        Phrase.of("turning under current"),
                        "",
                        Dimension.NUMBER,
                        List.of(gain),
                        List.of(),
                        Question.limits(bench.instruments(), Reads.DRIVE_CURRENT, Reads.DRIVE_CURRENT),
                        x -> x[0],
                        List.of()))
                .toList();
    }
}
