package servowright.engine.bench;

import java.util.Optional;

/** What a test of an angle sensor gave. */
record Sensed(TestResult result, Optional<AngleEvidence> evidence) {
    static Sensed of(TestResult result, AngleEvidence evidence) {
        return new Sensed(result, Optional.of(evidence));
    }

    static Sensed without(TestResult result) {
        return new Sensed(result, Optional.empty());
    }
}
