package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Instruments;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.Conductor;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Accuracy;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;

/** Direct current through two terminals. */
final class ResistanceTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.RESISTANCE;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.PHASE_RESISTANCE);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of("Drive disconnected, motor at rest and at room temperature for an hour; note it."),
                Phrase.of("Four wires: current through A and B, voltage on the same terminals inside the current"
                                + " clips; {low} and {high}.")
                        .with("low", bench.gentleCurrent(), "A")
                        .with("high", bench.gentleCurrent().times(2), "A"),
                Phrase.of("Then B to C and C to A. With a two-wire meter short its tips and take that off."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(Phrase.of("A winding under current sparks when it is opened: bring the current to zero first."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known kelvin = bench.temperature(TestFigure.WINDING_AT);
        return List.of(new Question(
                "resistance between two terminals",
                Phrase.of("winding at {t}").with("t", kelvin, "degC"),
                "",
                Dimension.RESISTANCE,
                settles(),
                List.of(kelvin),
                limits(bench),
                x -> WindingResistance.expectedReadingOhm(
                        WindingResistance.atTemperature(x[0], MotorBench.roomKelvin(), x[1], Conductor.COPPER_IACS),
                        HookUp.TWO_TERMINALS,
                        0),
                bench.ratios()));
    }

    /** A quotient of voltage and current has the limits of both. */
    private static List<Accuracy> limits(MotorBench bench) {
        Instruments instruments = bench.instruments();
        boolean byMeter = bench.test()
                .map(BenchTest::instrument)
                .map(i -> i.containsKey("resistance"))
                .orElse(true);
        return byMeter
                ? Question.limits(instruments, Reads.METER_RESISTANCE)
                : Question.limits(instruments, Reads.METER_VOLTAGE, Reads.METER_CURRENT);
    }
}
