package servowright.engine.acceptance;

import servowright.engine.known.Known;

/**
 * A figure held against a limit.
 *
 * @param verdict  how it stands
 * @param room     what is left to the limit, in the figure's dimension; negative beyond it
 * @param spread   half width of the 95 % interval of the room, SI
 */
public record Judgement(Verdict verdict, Known room, double spread) {}
