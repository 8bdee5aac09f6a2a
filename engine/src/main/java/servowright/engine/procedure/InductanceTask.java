package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Origin;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestFigure;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.WindingInductance;
import servowright.engine.motor.WindingResistance;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.HookUp;
import servowright.engine.quantity.Quantity;

/** Inductance between two terminals of the held rotor, by a meter or by a voltage step. */
final class InductanceTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.INDUCTANCE_STEP;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.PHASE_INDUCTANCE, MotorParameter.D_INDUCTANCE, MotorParameter.Q_INDUCTANCE);
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(
                Phrase.of(
                        "Drive disconnected, rotor held. Inductance meter at 1 kHz between A and B, C open; then B to C"
                                + " and C to A without moving the rotor: the three give d and q."),
                Phrase.of(
                        "Or a step of 1 V to 2 V through a shunt, current and voltage recorded for ten time constants."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(Phrase.of("A rotor kicks when the step comes: clamp it, hands off."));
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known outside = outside(bench);
        return List.of(
                new Question(
                        "inductance between two terminals",
                        Phrase.of("rotor held, between twice d and twice q inductance"),
                        "uH",
                        Dimension.INDUCTANCE,
                        List.of(MotorParameter.PHASE_INDUCTANCE),
                        List.of(),
                        Question.limits(bench.instruments(), Reads.METER_INDUCTANCE),
                        x -> x[0] * HookUp.TWO_TERMINALS.perPhase(),
                        bench.ratios()),
                new Question(
                        "time constant of the current step",
                        Phrase.of("with {r} of shunt and leads").with("r", outside, ""),
                        "ms",
                        Dimension.TIME,
                        List.of(MotorParameter.PHASE_INDUCTANCE, MotorParameter.PHASE_RESISTANCE),
                        List.of(outside),
                        List.of(),
                        InductanceTask::timeConstant,
                        bench.ratios()));
    }

    private static double timeConstant(double... x) {
        double loopOhm = WindingResistance.expectedReadingOhm(x[1], HookUp.TWO_TERMINALS, x[2]);
        double corner = WindingInductance.cornerHertz(loopOhm, x[0] * HookUp.TWO_TERMINALS.perPhase());
        return 1 / (2 * Math.PI * corner);
    }

    /** Shunt and leads in the loop, beside the winding. */
    private static Known outside(MotorBench bench) {
        Optional<Known> shunt = bench.stated(TestFigure.SHUNT);
        Optional<Known> leads = bench.stated(TestFigure.LEADS);
        Known none = Known.exact(new Quantity(0, Dimension.RESISTANCE), Origin.ASSUMED, "to be set");
        return shunt.orElse(none).plus(leads.orElse(none));
    }
}
