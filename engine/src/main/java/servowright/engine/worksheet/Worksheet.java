package servowright.engine.worksheet;

import java.util.List;
import servowright.engine.known.Outcome;
import servowright.engine.known.Problem;

/** One calculation: what it takes, what it gives, and how. */
public interface Worksheet {
    /** What it takes and gives, and where the formulas come from. */
    Declaration declaration();

    /** Inputs that each can be, but not together. Checked before anything is computed. */
    default List<Problem> contradictions(Inputs inputs) {
        return List.of();
    }

    /** Computes the results; missing when the inputs given are too few. */
    Outcome<Results> compute(Inputs inputs);
}
