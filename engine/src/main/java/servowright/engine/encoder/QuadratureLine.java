package servowright.engine.encoder;

import servowright.engine.quantity.Require;

/**
 * Two square waves a quarter period apart: how fast their edges come.
 *
 * @param periodsPerTurn of each channel; four counts come of each
 */
public record QuadratureLine(int periodsPerTurn) {

    public QuadratureLine {
        Require.atLeast("periods per turn", 1, periodsPerTurn);
    }

    public Resolution resolution() {
        return new Resolution(4.0 * periodsPerTurn);
    }

    /** Edges of both channels together, 1/s. */
    public double edgesPerSecond(double radPerSecond) {
        return 4 * periodsPerTurn * speed(radPerSecond) / (2 * Math.PI);
    }

    /**
     * Least time between two edges when they are displaced, seconds: (90° − x)/360° of a period.
     *
     * @param phaseErrorRad x, in a period of 2π
     */
    public double leastSeparationSecond(double radPerSecond, double phaseErrorRad) {
        Require.within("phase error", 0, Math.PI / 2, phaseErrorRad, "rad");
        return (Math.PI / 2 - phaseErrorRad) / (periodsPerTurn * speed(radPerSecond));
    }

    /** Speed above which a filter that needs a level for so long loses counts: half of the least separation. */
    public double fastestThroughFilter(double filterSecond, double phaseErrorRad) {
        Require.positive("length of the filter", filterSecond, "s");
        return leastSeparationSecond(1, phaseErrorRad) / (2 * filterSecond);
    }

    private static double speed(double radPerSecond) {
        return Require.positive("speed", radPerSecond, "rad/s");
    }
}
