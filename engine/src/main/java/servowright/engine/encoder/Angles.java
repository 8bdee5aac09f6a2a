package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Arithmetic of angles that begin again after one turn. Means are taken of the unit vectors, never of the numbers: the mean
 * of 350° and 20° is 5°, not 185°.
 *
 * <p><b>Source.</b> K. V. Mardia, P. E. Jupp, Directional Statistics, 2000, section 2.2 (recalled).
 */
public final class Angles {
    private static final double TURN = 2 * Math.PI;

    private Angles() {}

    /** The same angle from −π to π. */
    public static double wrapped(double rad) {
        return Math.IEEEremainder(Require.finite("angle", rad, "rad"), TURN);
    }

    /** Direction of the mean of the unit vectors, −π to π. */
    public static double mean(double... rad) {
        return resultant(rad).directionRad();
    }

    /**
     * Standard deviation of angles that lie close together, √(−2 ln r) with r the length of the mean unit vector. Infinite
     * when they cancel.
     */
    public static double standardDeviation(double... rad) {
        double length = Math.min(1, resultant(rad).length());
        return Math.sqrt(-2 * Math.log(length));
    }

    private static Planar resultant(double... rad) {
        Require.atLeast("number of angles", 1, rad.length);
        Planar sum = Planar.ZERO;
        for (double angle : rad) {
            sum = sum.plus(Planar.along(1, Require.finite("angle", angle, "rad")));
        }
        return sum.times(1.0 / rad.length);
    }

    /** The angles with whole turns added so that neighbours lie less than half a turn apart. */
    public static double[] unwrapped(double[] rad) {
        double[] unwrapped = rad.clone();
        for (int i = 1; i < rad.length; i++) {
            unwrapped[i] = unwrapped[i - 1] + wrapped(rad[i] - rad[i - 1]);
        }
        return unwrapped;
    }

    /** Angles from counts of a code that begins again after {@code countsPerTurn}; no count is taken off for truncation. */
    public static double[] ofCounts(int[] counts, int countsPerTurn) {
        Require.atLeast("counts per turn", 2, countsPerTurn);
        double[] rad = new double[counts.length];
        for (int i = 0; i < counts.length; i++) {
            Require.within("count", 0, countsPerTurn - 1.0, counts[i], "");
            rad[i] = TURN * counts[i] / countsPerTurn;
        }
        return rad;
    }
}
