package servowright.engine.bench;

import java.util.List;
import java.util.Optional;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.motor.ConstantBasis;
import servowright.engine.quantity.CurrentBasis;

/**
 * How the motor current of a test is counted.
 *
 * @param basis    as said, or the q axis
 * @param assumed  what was taken without being known
 */
record AmpBasis(CurrentBasis basis, Optional<Phrase> assumed) {
    /** The basis that the words of channel or reading name; the supply's current is refused. */
    static Outcome<AmpBasis> of(BenchTest test, String said) {
        if (said.contains("supply")) {
            return Outcome.missing(
                    "a motor current in " + test.id() + ": the supply's current is not the motor's, the bridge between"
                            + " them trades voltage for current",
                    "record the current of a phase or of the q axis");
        }
        for (CurrentBasis basis : List.of(CurrentBasis.PHASE_RMS, CurrentBasis.SIX_STEP, CurrentBasis.Q_AXIS)) {
            if (said.contains(basis.words())) {
                return Outcome.answer(new AmpBasis(basis, Optional.empty()), Working.NONE);
            }
        }
        return Outcome.answer(
                new AmpBasis(
                        CurrentBasis.Q_AXIS,
                        Optional.of(
                                Phrase.of(
                                        "basis of the current in " + test.id()
                                                + " not stated; taken as q axis, the peak of the phase current; per phase RMS ampere the torque constant would be √2 larger"))),
                Working.NONE);
    }

    /** Torque per ampere of this basis over torque per q-axis ampere. */
    double overQAxis() {
        return ConstantBasis.of(basis).perFlux()
                / ConstantBasis.of(CurrentBasis.Q_AXIS).perFlux();
    }
}
