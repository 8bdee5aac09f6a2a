package servowright.engine.worksheet;

import servowright.engine.known.Outcome;

/** One calculation: what it takes, what it gives, and how. */
public interface Worksheet {
    /** What it takes and gives, and where the formulas come from. */
    Declaration declaration();

    /** Computes the results; missing when the inputs given are too few. */
    Outcome<Results> compute(Inputs inputs);
}
