package servowright.engine.findings;

import servowright.engine.known.Phrase;

/**
 * A hazard that goes with this machine, whatever the figures say.
 *
 * @param id       a few plain words joined by hyphens
 * @param subject  the axis or part it is about; empty for the whole machine
 * @param sentence one sentence, the hazard first
 */
public record Caution(String id, String subject, Phrase sentence) {}
