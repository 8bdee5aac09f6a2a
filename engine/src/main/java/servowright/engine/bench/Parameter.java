package servowright.engine.bench;

import java.util.List;
import servowright.engine.known.Known;
import servowright.engine.known.Outcome;

/**
 * A parameter with its best value and everything that speaks for it.
 *
 * @param best       the value that predictions use, or what would give one
 * @param candidates every value there is, the best first
 */
public record Parameter(MotorParameter what, Outcome<Known> best, List<Candidate> candidates) {
    public Parameter {
        candidates = List.copyOf(candidates);
    }
}
