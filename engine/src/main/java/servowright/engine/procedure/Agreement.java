package servowright.engine.procedure;

import java.util.List;
import java.util.Optional;
import servowright.engine.motor.RatioName;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;

/**
 * A reading against its window.
 *
 * @param inside whether it lies within
 * @param off    reading over expected, less 1; beyond bounds over the nearest of them; empty inside bounds and for a
 *               temperature, whose share means nothing
 * @param factor what the ratio of a reading outside probably is, in words; empty when unnamed
 */
public record Agreement(boolean inside, Optional<Quantity> off, Optional<String> factor) {
    /** A ratio is called by a name within this, beside what the window leaves open (common practice, no source). */
    private static final double NEAR = 0.03;

    /** A window wider than this share fits half of all names. */
    private static final double MOST_NEAR = 0.08;

    static Agreement of(Window window, Quantity read, List<RatioName> also) {
        boolean inside =
                read.si() >= window.low().si() && read.si() <= window.high().si();
        boolean bounds = window.ends() == Window.Ends.BOUNDS;
        double end = read.si() > window.high().si()
                ? window.high().si()
                : window.low().si();
        double expected = bounds ? end : window.expected().si();
        boolean scale = window.expected().dimension().equals(Dimension.TEMPERATURE);
        if (expected == 0 || scale || (bounds && inside)) {
            return new Agreement(inside, Optional.empty(), Optional.empty());
        }
        double ratio = read.si() / expected;
        double near = Math.min(MOST_NEAR, NEAR + window.expected().relativeUncertainty());
        Optional<String> factor = inside || !(ratio > 0)
                ? Optional.empty()
                : RatioName.fitting(ratio, near, also).stream()
                        .filter(m -> m.name().value() > 1)
                        .findFirst()
                        .map(m -> m.words() + ", " + m.name().meaning());
        return new Agreement(inside, Optional.of(Quantity.number(ratio - 1)), factor);
    }
}
