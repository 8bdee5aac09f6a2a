package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Quantity;

/** Sines of several frequencies go in, one after the other. */
final class SineResponseTask implements MotorTask {
    /** Around the corner the ratio tells the time constant, below it the gain, above it the delay. */
    private static final double AROUND = 3;

    @Override
    public TestKind kind() {
        return TestKind.SINE_RESPONSE;
    }

    @Override
    public List<Sought> settles() {
        return ShaftResponse.settles();
    }

    @Override
    public boolean suits(MotorBench bench) {
        return ShaftResponse.suits(bench);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        Phrase sines = ShaftResponse.amplitude(
                bench,
                "Free shaft, motor held. Drive in voltage control: sines",
                " about a speed that does not change sign;");
        Phrase at = ShaftResponse.tauSecond(bench)
                .map(ShaftResponse::hertz)
                .map(f -> Phrase.of(
                                "{a}, {b}, {c} and one or two between, ten periods of each; q voltage and speed logged"
                                        + " ten times a period or more.")
                        .with("a", hertz(f / AROUND), "Hz")
                        .with("b", hertz(f), "Hz")
                        .with("c", hertz(f * AROUND), "Hz"))
                .orElse(Phrase.of("five frequencies around the one where the speed begins to fall, ten periods of each;"
                        + " q voltage and speed logged ten times a period or more."));
        return List.of(sines, at);
    }

    private static Quantity hertz(double f) {
        return Quantity.of(MotorBench.round(f), "Hz");
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                FIRST_TURN,
                Phrase.of("A sine can meet a resonance of the frame: raise the amplitude slowly, stop at noise."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        return List.of(ShaftResponse.corner(bench), ShaftResponse.speedPerVolt(bench));
    }

    @Override
    public List<Expectation> bounded(List<TestResult> made, Optional<TestResult> one) {
        return List.of(ShaftResponse.loop(one));
    }
}
