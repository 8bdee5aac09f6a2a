package servowright.engine.bench;

import java.util.Optional;
import servowright.engine.known.Known;

/**
 * Two values of one parameter that cannot both be right.
 *
 * @param ratio  second divided by first
 * @param factor what the ratio probably is, in words: {@code pi/3, six-step against line peak}; empty when unnamed
 */
public record Contradiction(
        String motor,
        MotorParameter parameter,
        Candidate first,
        Candidate second,
        Known ratio,
        Optional<String> factor) {}
