package servowright.engine.encoder;

import servowright.engine.numeric.Distribution;
import servowright.engine.quantity.Require;

/**
 * One contributor to a length that adds up from parts.
 *
 * @param name as the drawing names it
 * @param direction +1 if a longer part widens the sum, −1 if it narrows it
 * @param nominalMetre its length
 * @param toleranceMetre how far it may depart either way
 * @param scatter how it lies within its tolerance
 */
public record StackPart(String name, int direction, double nominalMetre, double toleranceMetre, Scatter scatter) {

    /** How a part lies within its tolerance. */
    public enum Scatter {
        /** Equally likely anywhere: what is known when only the limits are. */
        EVEN,
        /** Normal and centred, the tolerance being three standard deviations: a process that is held. */
        HELD
    }

    public StackPart {
        Require.finite("length of a part", nominalMetre, "m");
        Require.notNegative("tolerance of a part", toleranceMetre, "m");
        if (direction != 1 && direction != -1) {
            throw new IllegalArgumentException("a part widens (+1) or narrows (-1), was " + direction);
        }
    }

    /** A part that widens the gap when longer, of which only the limits are known. */
    public static StackPart widens(String name, double nominalMetre, double toleranceMetre) {
        return new StackPart(name, 1, nominalMetre, toleranceMetre, Scatter.EVEN);
    }

    /** A part that narrows the gap when longer, of which only the limits are known. */
    public static StackPart narrows(String name, double nominalMetre, double toleranceMetre) {
        return new StackPart(name, -1, nominalMetre, toleranceMetre, Scatter.EVEN);
    }

    public StackPart held() {
        return new StackPart(name, direction, nominalMetre, toleranceMetre, Scatter.HELD);
    }

    double standardDeviationMetre() {
        return scatter == Scatter.HELD ? toleranceMetre / 3 : toleranceMetre / Math.sqrt(3);
    }

    Distribution departureMetre() {
        return scatter == Scatter.HELD
                ? Distribution.normal(0, toleranceMetre / 3)
                : Distribution.rectangular(-toleranceMetre, toleranceMetre);
    }
}
