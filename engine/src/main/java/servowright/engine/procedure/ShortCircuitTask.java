package servowright.engine.procedure;

import java.util.ArrayList;
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
import servowright.engine.machine.TestKind;
import servowright.engine.motor.ShortCircuit;
import servowright.engine.motor.Winding;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/** Turned from outside with the terminals joined. */
final class ShortCircuitTask implements MotorTask {
    private static final List<Sought> ALL = List.of(
            MotorParameter.D_INDUCTANCE,
            MotorParameter.PHASE_RESISTANCE,
            MotorParameter.FLUX_LINKAGE,
            MotorParameter.POLE_PAIRS);

    @Override
    public TestKind kind() {
        return TestKind.SHORT_CIRCUIT;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.D_INDUCTANCE);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of("Drive disconnected, the three terminals joined by short, thick leads, a current clamp on"
                        + " one. Shaft in a drill, from slow to fast in four steps; a few seconds each."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(
                Phrase.of("The joined winding brakes hardest at low speed and wrenches the drill: hold it in a vice."),
                Phrase.of(
                        "The current can pass what the winding bears for good: seconds at a time, then let it cool."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known speed = fastest(bench).orElseGet(bench::drillSpeed);
        List<Question> all = new ArrayList<>();
        all.add(new Question(
                "phase current, rms",
                Phrase.of("at {n}, terminals joined").with("n", speed, "rpm"),
                "A",
                Dimension.CURRENT,
                ALL,
                List.of(speed),
                Question.limits(bench.instruments(), Reads.METER_CURRENT),
                x -> ShortCircuit.of(winding(x), x[4]).phasePeakAmp() / Math.sqrt(2),
                bench.ratios()));
        if (bench.test().isEmpty()) {
            all.add(new Question(
                    "largest braking torque",
                    Phrase.of("at the speed where it is largest"),
                    "N m",
                    Dimension.TORQUE,
                    ALL,
                    List.of(),
                    List.of(),
                    x -> ShortCircuit.peak(x[1], x[0], x[2], (int) Math.round(x[3]))
                            .brakeNewtonMetre(),
                    bench.ratios()));
        }
        return all;
    }

    private static Winding winding(double... x) {
        return new Winding(x[1], x[0], x[0], x[2], (int) Math.round(x[3]));
    }

    private static Optional<Known> fastest(MotorBench bench) {
        return bench.test().stream()
                .flatMap(t -> t.readings().stream())
                .map(Reading::figures)
                .flatMap(f -> f.known(ReadingFigure.SPEED).stream())
                .max(Comparator.comparingDouble(Known::si))
                .map(k -> MotorBench.condition(new Quantity(k.si(), Dimension.SPEED)));
    }
}
