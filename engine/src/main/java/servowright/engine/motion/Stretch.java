package servowright.engine.motion;

import servowright.engine.quantity.Require;

/**
 * A stretch of time in which the load speed changes evenly without changing its sign.
 *
 * @param second       duration
 * @param startRadPerS load speed at the beginning
 * @param endRadPerS   load speed at the end
 */
public record Stretch(double second, double startRadPerS, double endRadPerS) {

    /** Refuses a stretch whose speed passes through zero: friction turns around there, so it must be cut in two. */
    public Stretch {
        Require.positive("duration of a stretch", second, "s");
        Require.finite("speed at the start of a stretch", startRadPerS, "rad/s");
        Require.finite("speed at the end of a stretch", endRadPerS, "rad/s");
        if (startRadPerS * endRadPerS < 0) {
            throw new IllegalArgumentException("a stretch must not change its sense: cut it where the speed is zero");
        }
    }

    /** Acceleration, rad/s². */
    public double radPerS2() {
        return (endRadPerS - startRadPerS) / second;
    }

    /** Sense of the motion: 1, −1, or 0 at rest. */
    public double sense() {
        return Math.signum(startRadPerS + endRadPerS);
    }
}
