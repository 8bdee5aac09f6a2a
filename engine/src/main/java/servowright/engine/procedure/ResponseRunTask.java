package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.quantity.Quantity;

/** Steps or anything else go in, what comes out is recorded along. */
final class ResponseRunTask implements MotorTask {
    /** A step is held until the rest of the lag is below 1 %. */
    private static final double HELD = 5;

    /** Samples that follow a lag well (common practice, no source). */
    private static final double APART = 0.1;

    @Override
    public TestKind kind() {
        return TestKind.RESPONSE_RUN;
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
        Phrase steps = ShaftResponse.amplitude(
                bench, "Free shaft, motor held. Drive in voltage control: steps", " both ways, twenty or more;");
        Phrase pace = ShaftResponse.tauSecond(bench)
                .map(tau -> Phrase.of("each held for {t} or longer; q voltage and speed logged every {dt} or closer.")
                        .with("t", second(HELD * tau), "ms")
                        .with("dt", second(APART * tau), "ms"))
                .orElse(Phrase.of(
                        "each held until the speed stands; q voltage and speed logged ten times or more while it"
                                + " rises."));
        return List.of(
                steps,
                pace,
                Phrase.of(
                        "A loop is looked at likewise: its command and what it controls, in steps small enough that no"
                                + " limit is touched."));
    }

    private static Known second(double tau) {
        return Known.exact(Quantity.of(MotorBench.round(tau), "s"), Origin.DERIVED, "time constant");
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                FIRST_TURN, Phrase.of("Steps shake what is bolted on: begin with a small one, hand on the stop."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        return List.of(ShaftResponse.timeConstant(bench), ShaftResponse.speedPerVolt(bench));
    }

    @Override
    public List<Expectation> bounded(List<TestResult> made, Optional<TestResult> one) {
        return List.of(ShaftResponse.loop(one));
    }
}
