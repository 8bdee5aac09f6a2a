package servowright.engine.encoder;

import java.util.List;
import java.util.stream.DoubleStream;
import servowright.engine.quantity.Require;

/** What a single-turn sensor before a gear knows of the output, and what a second one adds. */
public final class GearedAngle {
    /** In turns: ends of a travel belong to it. */
    private static final double ROUNDING = 1e-9;

    private GearedAngle() {}

    /**
     * Different output angles that one reading of a single-turn sensor on the motor side can mean, over a travel of the
     * output.
     */
    public static int meanings(double motorTurnsPerOutputTurn, double outputTravelRad) {
        double turns = Require.positive("gear ratio", motorTurnsPerOutputTurn, "")
                * Require.positive("travel of the output", outputTravelRad, "rad")
                / (2 * Math.PI);
        return (int) Math.max(1, Math.ceil(turns - 1e-9));
    }

    /**
     * Angles within a travel at which a sensor of one turn gives a reading: the reading and whole turns more or less. One
     * tells where the output stands after power comes back; none says that sensor, zero or stop has moved.
     */
    public static List<Double> anglesWithin(double readingRad, double lowestRad, double highestRad) {
        Require.finite("reading", readingRad, "rad");
        Require.notNegative("travel", highestRad - lowestRad, "rad");
        double turn = 2 * Math.PI;
        double first = readingRad + Math.ceil((lowestRad - readingRad) / turn - ROUNDING) * turn;
        return DoubleStream.iterate(first, a -> a <= highestRad + ROUNDING * turn, a -> a + turn)
                .boxed()
                .toList();
    }

    /**
     * Largest error of a second sensor on the output, play of the gear included, that still tells the turn of the motor:
     * half a motor turn seen at the output, less what the motor sensor errs.
     */
    public static double tellsTurnWithinRad(double motorTurnsPerOutputTurn, double motorErrorRad) {
        Require.within("error of the motor sensor", 0, Math.PI, motorErrorRad, "rad");
        return (Math.PI - motorErrorRad) / Require.positive("gear ratio", motorTurnsPerOutputTurn, "");
    }

    /**
     * Turns over which two sensors on wheels of n and m teeth, driven by one of z teeth, read a pair that comes but once:
     * lcm(n, m)/z turns of the driver.
     */
    public static double turnsOfPair(int driverTeeth, int firstTeeth, int secondTeeth) {
        Require.atLeast("teeth", 1, Math.min(driverTeeth, Math.min(firstTeeth, secondTeeth)));
        long a = firstTeeth;
        long b = secondTeeth;
        while (b != 0) {
            long rest = a % b;
            a = b;
            b = rest;
        }
        return (double) firstTeeth / a * secondTeeth / driverTeeth;
    }

    /** Electrical error of a motor commutated from a sensor on the output: the error times pole pairs and gear ratio. */
    public static double throughGearElectricalRad(
            double outputErrorRad, int polePairs, double motorTurnsPerOutputTurn) {
        Require.atLeast("pole pairs", 1, polePairs);
        return Require.finite("error at the output", outputErrorRad, "rad")
                * polePairs
                * Require.positive("gear ratio", motorTurnsPerOutputTurn, "");
    }
}
