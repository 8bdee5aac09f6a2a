package servowright.engine.encoder;

import java.util.List;
import java.util.random.RandomGenerator;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Require;

/**
 * How far the sensor or the magnet may sit off the axis of rotation, from what can move it there.
 *
 * <p><b>Formula.</b> Sum of independent plane vectors. Mean square of each: disc a²/2, square 2a²/3, scatter 2σ², circle a².
 * <b>Source.</b> Statistics of independent sums.
 */
public record Eccentricity(List<Part> parts) {

    public Eccentricity {
        parts = List.copyOf(parts);
        Require.atLeast("number of parts", 1, parts.size());
    }

    /** How a part moves the centre. */
    public enum Way {
        /** Anywhere in a disc of that radius: a screw in its hole. */
        DISC,
        /** Either way in x and in y, evenly: a hole against a copper pattern. */
        SQUARE,
        /** Normal in x and in y with that standard deviation: a placed chip. */
        SCATTER,
        /** That far in an unknown direction: half a total runout. */
        CIRCLE
    }

    /**
     * One part.
     *
     * @param name as the drawing names it
     * @param sizeMetre radius, half width, standard deviation or distance
     */
    public record Part(String name, Way way, double sizeMetre) {
        public Part {
            Require.notNegative("size of a misplacement", sizeMetre, "m");
        }

        private double farthestMetre() {
            return switch (way) {
                case DISC, CIRCLE -> sizeMetre;
                case SQUARE -> Math.sqrt(2) * sizeMetre;
                case SCATTER -> 3 * sizeMetre;
            };
        }

        private double meanSquare() {
            double square = sizeMetre * sizeMetre;
            return switch (way) {
                case DISC -> square / 2;
                case CIRCLE -> square;
                case SQUARE -> 2 * square / 3;
                case SCATTER -> 2 * square;
            };
        }

        private Planar draw(RandomGenerator random) {
            return switch (way) {
                case DISC ->
                    Planar.along(sizeMetre * Math.sqrt(random.nextDouble()), 2 * Math.PI * random.nextDouble());
                case CIRCLE -> Planar.along(sizeMetre, 2 * Math.PI * random.nextDouble());
                case SQUARE -> new Planar(2 * random.nextDouble() - 1, 2 * random.nextDouble() - 1).times(sizeMetre);
                case SCATTER -> new Planar(random.nextGaussian(), random.nextGaussian()).times(sizeMetre);
            };
        }
    }

    /** Everything the same way; a scatter counts three standard deviations. */
    public double worstMetre() {
        return parts.stream().mapToDouble(Part::farthestMetre).sum();
    }

    /** Root mean square of the distance. */
    public double rootMeanSquareMetre() {
        return Math.sqrt(parts.stream().mapToDouble(Part::meanSquare).sum());
    }

    /** Drawn distances from the axis; their quantiles answer how many assemblies lie within a distance. */
    public double[] distancesMetre(int trials, RandomGenerator random) {
        Require.atLeast("number of trials", 2, trials);
        double[] distances = new double[trials];
        for (int i = 0; i < trials; i++) {
            Planar sum = Planar.ZERO;
            for (Part part : parts) {
                sum = sum.plus(part.draw(random));
            }
            distances[i] = sum.length();
        }
        return distances;
    }

    /** Distance that the given share of assemblies stays within. */
    public double quantileMetre(double share, int trials, RandomGenerator random) {
        return Statistics.quantile(distancesMetre(trials, random), share);
    }
}
