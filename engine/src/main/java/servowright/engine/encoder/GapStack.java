package servowright.engine.encoder;

import java.util.List;
import java.util.random.RandomGenerator;
import servowright.engine.numeric.Distribution;
import servowright.engine.numeric.MonteCarlo;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Require;

/**
 * The parts that leave the gap from the face of the magnet to the sensing element: what holds the sensor up widens it,
 * what sticks out towards the sensor narrows it, the plating of the magnet narrows it, and the depth of the element below
 * the surface of its package widens it.
 *
 * <p><b>Source.</b> Statistics of independent sums; the factor {@value #SHIFT} on a root sum of squares for processes off
 * their centre after A. Bender (recalled).
 */
public record GapStack(List<StackPart> parts) {

    /** Factor for processes whose centring is not known. */
    private static final double SHIFT = 1.5;

    public GapStack {
        parts = List.copyOf(parts);
        Require.atLeast("number of parts", 1, parts.size());
    }

    public double nominalMetre() {
        return parts.stream().mapToDouble(p -> p.direction() * p.nominalMetre()).sum();
    }

    /** All tolerances the same way: no assembly departs farther. */
    public double worstMetre() {
        return parts.stream().mapToDouble(StackPart::toleranceMetre).sum();
    }

    /** Root of the sum of the squared tolerances: three standard deviations when every part is held. */
    public double rootSumOfSquaresMetre() {
        return Math.sqrt(parts.stream()
                .mapToDouble(p -> p.toleranceMetre() * p.toleranceMetre())
                .sum());
    }

    /** The root sum of squares with room for processes off their centre. */
    public double shiftedMetre() {
        return SHIFT * rootSumOfSquaresMetre();
    }

    /** Standard deviation of the gap with the scatter of each part. */
    public double standardDeviationMetre() {
        return Math.sqrt(parts.stream()
                .mapToDouble(p -> p.standardDeviationMetre() * p.standardDeviationMetre())
                .sum());
    }

    /**
     * Departure that the given share of assemblies stays within, either way, by drawing every part.
     *
     * @param share for example 0.9973
     */
    public double departureMetre(double share, int trials, RandomGenerator random) {
        Require.within("share of the assemblies", 0, 1, share, "");
        double[] drawn = departuresMetre(trials, random);
        for (int i = 0; i < drawn.length; i++) {
            drawn[i] = Math.abs(drawn[i]);
        }
        return Statistics.quantile(drawn, share);
    }

    /** Drawn departures from the nominal gap. */
    public double[] departuresMetre(int trials, RandomGenerator random) {
        List<Distribution> each = parts.stream().map(StackPart::departureMetre).toList();
        return MonteCarlo.outputs(
                drawn -> {
                    double sum = 0;
                    for (double departure : drawn) {
                        sum += departure;
                    }
                    return sum;
                },
                each,
                trials,
                random);
    }

    /**
     * Room left between magnet and package when everything goes against it.
     *
     * <p>Nominal gap less the depth of the element, the worst stack, the play of the shaft along its axis and growth by
     * heat. Keep 0.3 mm; common practice, no source.
     */
    public double leastRoomMetre(double depthMetre, double endPlayMetre, double growthMetre) {
        Require.notNegative("depth of the element", depthMetre, "m");
        Require.notNegative("play along the axis", endPlayMetre, "m");
        Require.notNegative("growth by heat", growthMetre, "m");
        return nominalMetre() - depthMetre - worstMetre() - endPlayMetre - growthMetre;
    }
}
