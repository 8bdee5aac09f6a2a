package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Instruments.Reads;
import servowright.engine.bench.MotorParameter;
import servowright.engine.bench.Sought;
import servowright.engine.known.Known;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;
import servowright.engine.motor.OperatingPoint;
import servowright.engine.motor.Winding;
import servowright.engine.quantity.Dimension;

/** What a drive logs while its axis moves. */
final class AxisLogTask implements MotorTask {
    @Override
    public TestKind kind() {
        return TestKind.AXIS_LOG;
    }

    @Override
    public List<Sought> settles() {
        return List.of(MotorParameter.PHASE_RESISTANCE, MotorParameter.FLUX_LINKAGE);
    }

    @Override
    public boolean spare() {
        return true;
    }

    @Override
    public List<Phrase> hookUp(MotorBench bench) {
        return List.of(Phrase.of(
                "Axis moved by its drive at several speeds and currents, both ways; position, speed, q current"
                        + " and q voltage logged with their times."));
    }

    @Override
    public List<Phrase> cautions(MotorBench bench) {
        return List.of(FIRST_TURN);
    }

    @Override
    public List<Question> questions(MotorBench bench) {
        Known speed = bench.drivenSpeed();
        Known current = bench.gentleCurrent();
        return List.of(new Question(
                "q voltage",
                Phrase.of("at {n} and {i}, q axis").with("n", speed, "rpm").with("i", current, "A"),
                "V",
                Dimension.VOLTAGE,
                List.of(MotorParameter.PHASE_RESISTANCE, MotorParameter.FLUX_LINKAGE, MotorParameter.POLE_PAIRS),
                List.of(speed, current),
                Question.limits(bench.instruments(), Reads.DRIVE_VOLTAGE),
                x -> OperatingPoint.of(new Winding(x[0], 0, 0, x[1], (int) Math.round(x[2])), 0, x[4], x[3])
                        .qVolt(),
                bench.ratios()));
    }
}
