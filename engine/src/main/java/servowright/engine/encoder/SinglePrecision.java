package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Where an angle or a count kept in single precision runs out of digits.
 *
 * <p><b>Source.</b> IEEE 754 binary32: 24 bits of significand, rounding to nearest with ties to even.
 */
public final class SinglePrecision {
    /** Whole numbers up to here are kept exactly. */
    private static final double WHOLE = 1 << 24;

    private SinglePrecision() {}

    /** Time after which a count that grows from 0 loses single counts: 2^24/(N ω/2π), seconds. */
    public static double countingSecond(double countsPerTurn, double radPerSecond) {
        double rate = Require.positive("counts per turn", countsPerTurn, "")
                * Require.positive("speed", radPerSecond, "rad/s")
                / (2 * Math.PI);
        return WHOLE / rate;
    }

    /** Distance from an angle to the next number, radians. */
    public static double spacingRad(double rad) {
        return Math.ulp((float) Require.finite("angle", rad, "rad"));
    }

    /**
     * Speed below which an angle that is added up step by step stands still: half the spacing times the rate of the steps.
     *
     * @param rad   how far it has come
     * @param hertz steps in a second
     */
    public static double standsBelowRadPerSecond(double rad, double hertz) {
        return spacingRad(rad) / 2 * Require.positive("rate of the steps", hertz, "Hz");
    }
}
