package servowright.engine.encoder;

import java.util.random.RandomGenerator;
import servowright.engine.numeric.GivenUp;
import servowright.engine.numeric.Statistics;
import servowright.engine.numeric.Values;
import servowright.engine.quantity.Require;

/**
 * Angle errors of many assemblies built to the same drawing, drawn with the second-order formula of
 * {@link Assembly#secondOrder}.
 *
 * @param firstRad first harmonic of each
 * @param secondRad second harmonic of each
 * @param peakRad largest distance from the mean, among {@value #ANGLES} angles
 */
public record MountSpread(Values firstRad, Values secondRad, Values peakRad) {

    private static final int ANGLES = 32;

    /**
     * What may sit askew, as root mean squares of normally distributed plane vectors.
     *
     * @param elevationRad standard deviation of the magnetisation's elevation
     */
    public record Misplacement(
            double sensorOffsetMetre,
            double magnetOffsetMetre,
            double sensorTiltRad,
            double magnetTiltRad,
            double elevationRad) {
        public Misplacement {
            Require.notNegative("offset of the sensor", sensorOffsetMetre, "m");
            Require.notNegative("offset of the magnet", magnetOffsetMetre, "m");
            Require.notNegative("tilt of the sensor", sensorTiltRad, "rad");
            Require.notNegative("tilt of the magnet", magnetTiltRad, "rad");
            Require.notNegative("elevation of the magnetisation", elevationRad, "rad");
        }
    }

    /** Draws assemblies. */
    public static MountSpread draw(AxisField axis, Misplacement misplacement, int trials, RandomGenerator random) {
        Require.atLeast("number of trials", 2, trials);
        SecondOrder.Round round = new SecondOrder.Round(ANGLES);
        double[] first = new double[trials];
        double[] second = new double[trials];
        double[] peak = new double[trials];
        for (int i = 0; i < trials; i++) {
            GivenUp.check();
            SecondOrder drawn = SecondOrder.of(
                    axis,
                    plane(misplacement.sensorOffsetMetre, random),
                    plane(misplacement.magnetOffsetMetre, random),
                    plane(misplacement.sensorTiltRad, random),
                    plane(misplacement.magnetTiltRad, random),
                    misplacement.elevationRad * random.nextGaussian());
            first[i] = drawn.first().length();
            second[i] = drawn.second().length();
            peak[i] = drawn.peakRad(round);
        }
        return new MountSpread(Values.of(first), Values.of(second), Values.of(peak));
    }

    private static Planar plane(double rootMeanSquare, RandomGenerator random) {
        double each = rootMeanSquare / Math.sqrt(2);
        return new Planar(each * random.nextGaussian(), each * random.nextGaussian());
    }

    /** First harmonic that the given share of assemblies stays within. */
    public double firstRad(double share) {
        return Statistics.quantile(firstRad.toArray(), share);
    }

    /** Second harmonic that the given share of assemblies stays within. */
    public double secondRad(double share) {
        return Statistics.quantile(secondRad.toArray(), share);
    }

    /** Peak error that the given share of assemblies stays within. */
    public double peakRad(double share) {
        return Statistics.quantile(peakRad.toArray(), share);
    }
}
