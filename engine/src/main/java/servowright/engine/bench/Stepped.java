package servowright.engine.bench;

import java.util.List;

/**
 * A reduced inductance test.
 *
 * @param result what the test gave
 * @param loops  inductances between contacts, for what three pairs say together
 */
record Stepped(TestResult result, List<LoopInductance> loops) {
    Stepped {
        loops = List.copyOf(loops);
    }
}
