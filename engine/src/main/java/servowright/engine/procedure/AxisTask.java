package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Sought;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;

/** A kind of test of the angle sensor of an axis. */
interface AxisTask {
    TestKind kind();

    /** What it tells, most useful first. */
    List<Sought> settles();

    /** Whether it makes sense for the sensor of this axis. */
    default boolean suits(AxisBench bench) {
        return true;
    }

    /** Whether the angle of this axis cannot do without it. */
    default boolean needed(AxisBench bench) {
        return true;
    }

    List<Phrase> hookUp(AxisBench bench);

    List<Phrase> cautions(AxisBench bench);

    List<Expectation> expectations(AxisBench bench);
}
