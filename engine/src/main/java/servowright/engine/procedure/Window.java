package servowright.engine.procedure;

import servowright.engine.known.Known;
import servowright.engine.quantity.Quantity;

/**
 * Where a reading should lie.
 *
 * @param expected best estimate with the uncertainty of all that went in, the instrument included
 * @param low      lower end
 * @param high     upper end
 * @param ends     what its ends are
 * @param from     where the parameter comes from: {@code label, machine.yaml:17}; may be empty
 */
public record Window(Known expected, Quantity low, Quantity high, Ends ends, String from) {
    /** What the ends of a window are. */
    public enum Ends {
        /** Twice the standard uncertainty to either side. */
        TWICE,
        /** The shortest interval of draws, since the function bends. */
        DRAWN,
        /** Bounds between which anything may be. */
        BOUNDS
    }

    /** Half of its width, SI. */
    public double halfWidth() {
        return (high.si() - low.si()) / 2;
    }
}
