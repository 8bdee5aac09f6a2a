package servowright.engine.procedure;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.bench.Sought;
import servowright.engine.bench.TestResult;
import servowright.engine.known.Phrase;
import servowright.engine.machine.TestKind;

/** A kind of test of a motor: how it is set up, what can hurt, what it reads. */
interface MotorTask {
    /** What every test with a turning motor under power needs. */
    Phrase FIRST_TURN = Phrase.of("A motor under power pulls and jumps: free shaft, motor held down, supply limited in"
            + " current, emergency stop that takes the power away.");

    TestKind kind();

    /** Kinds of test that make this step, its own among them. */
    default Set<TestKind> kinds() {
        return EnumSet.of(kind());
    }

    /** Whether it could settle anything of this motor; a test that was made is shown all the same. */
    default boolean suits(MotorBench bench) {
        return true;
    }

    /** What it tells, most useful first. */
    List<Sought> settles();

    /** Whether it only confirms what other steps tell, as long as nothing is at odds. */
    default boolean spare() {
        return false;
    }

    List<Phrase> hookUp(MotorBench bench);

    List<Phrase> cautions(MotorBench bench);

    List<Question> questions(MotorBench bench);

    /**
     * Readings whose window is no figure of the motor.
     *
     * @param made tests of this step
     * @param one  the test of them whose reading is meant; empty for what to expect of the next
     */
    default List<Expectation> bounded(List<TestResult> made, Optional<TestResult> one) {
        return List.of();
    }
}
