package servowright.engine.procedure;

import java.util.List;
import servowright.engine.bench.Sought;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;

/** A kind of test of a motor: how it is set up, what can hurt, what it reads. */
interface MotorTask {
    /** What every test with a turning motor under power needs. */
    Phrase FIRST_TURN = Phrase.of("A motor under power pulls and jumps: free shaft, motor held down, supply limited in"
            + " current, emergency stop that takes the power away.");

    TestKind kind();

    /** What it tells, most useful first. */
    List<Sought> settles();

    /** Whether it only confirms what other steps tell, as long as nothing is at odds. */
    default boolean spare() {
        return false;
    }

    List<Phrase> hookUp(MotorBench bench);

    List<Phrase> cautions(MotorBench bench);

    List<Question> questions(MotorBench bench);
}
