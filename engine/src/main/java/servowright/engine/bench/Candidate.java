package servowright.engine.bench;

import servowright.engine.known.Known;
import servowright.engine.known.Working;

/**
 * One value of a parameter: from the label, from a test, from counting.
 *
 * @param from    in words: {@code label}, {@code spin hub 1}
 * @param working how it came about, down to what was stated or read
 */
public record Candidate(Known value, String from, Working working) {}
