package servowright.engine.encoder;

import java.util.Arrays;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import servowright.engine.numeric.Statistics;
import servowright.engine.quantity.Require;

/**
 * Commutation offset from a rotor that was pulled to a standing field at several electrical angles, from both sides.
 *
 * <p><b>Formula.</b> At each stop the rotor rests within asin(T_f/T_m) of the field; the offset is the circular mean of
 * s p θ_read − θ_e over both sides, s the direction in which the sensor counts, and half of the difference between the sides
 * is the friction. Stops over a whole mechanical turn also average the first p − 1 harmonics of the sensor. <b>Validity.</b>
 * No load and no gravity. A rotor that sat half an electrical turn off does not move: its stop lies apart and is named.
 * <b>Source.</b> Torque balance of a rotor at a fixed current, derived.
 *
 * @param polePairs found from the travel
 * @param reversed whether the sensor counts against the field
 * @param offsetElectricalRad s p θ_read − θ_e, from −π to π
 * @param frictionElectricalRad half of the difference between the two sides
 * @param spreadElectricalRad standard deviation of the stops about offset and friction
 * @param trapped numbers of the stops about half a turn off, not counted
 */
public record Alignment(
        int polePairs,
        boolean reversed,
        double offsetElectricalRad,
        double frictionElectricalRad,
        double spreadElectricalRad,
        List<Integer> trapped) {

    public Alignment {
        trapped = List.copyOf(trapped);
    }

    /**
     * One stop.
     *
     * @param fieldElectricalRad angle of the field, whole turns counted
     * @param readRad angle of the sensor at rest
     * @param forwards whether the field came to it turning forwards
     */
    public record Stop(double fieldElectricalRad, double readRad, boolean forwards) {}

    /** What came of a series of stops. */
    public sealed interface Outcome {
        /** The offset was found. */
        record Found(Alignment alignment) implements Outcome {}

        /**
         * The rotor has not followed.
         *
         * @param ratio electrical over mechanical travel, to be a whole number
         */
        record NotFollowed(double ratio) implements Outcome {}

        /** Stops from one side only: the offset is off by up to the friction, and nothing tells by how much. */
        record OneSide() implements Outcome {}
    }

    /** Electrical angle apart from the others that only a rotor at its unstable rest can be. */
    private static final double TRAP = Math.PI / 2;

    /** From stops in the order they were made, no two neighbours more than half a mechanical turn apart. */
    public static Outcome of(List<Stop> stops) {
        Require.atLeast("number of stops", 4, stops.size());
        double[] read =
                Angles.unwrapped(stops.stream().mapToDouble(Stop::readRad).toArray());
        double[] field = stops.stream().mapToDouble(Stop::fieldElectricalRad).toArray();
        double electrical = travel(field);
        double signed = electrical * followed(field, read);
        OptionalInt polePairs = PolePairs.of(electrical, signed);
        if (polePairs.isEmpty()) {
            return new Outcome.NotFollowed(PolePairs.ratio(electrical, signed));
        }
        if (stops.stream().map(Stop::forwards).distinct().count() < 2) {
            return new Outcome.OneSide();
        }
        return new Outcome.Found(found(stops, polePairs.getAsInt(), signed < 0));
    }

    private static double travel(double[] field) {
        return IntStream.range(1, field.length)
                .mapToDouble(i -> Math.abs(field[i] - field[i - 1]))
                .sum();
    }

    /** Median over the steps of what the sensor made of the step of the field: a few trapped stops do not move it. */
    private static double followed(double[] field, double[] read) {
        double[] shares = IntStream.range(1, field.length)
                .filter(i -> field[i] != field[i - 1])
                .mapToDouble(i -> (read[i] - read[i - 1]) / (field[i] - field[i - 1]))
                .toArray();
        return shares.length > 0 ? Statistics.median(shares) : 0;
    }

    private static Alignment found(List<Stop> stops, int polePairs, boolean reversed) {
        int sign = reversed ? -1 : 1;
        double[] each = stops.stream()
                .mapToDouble(s -> Angles.wrapped(sign * polePairs * s.readRad() - s.fieldElectricalRad()))
                .toArray();
        double centre = medianDirection(each);
        List<Integer> trapped = IntStream.range(0, each.length)
                .filter(i -> Math.abs(Angles.wrapped(each[i] - centre)) > TRAP)
                .boxed()
                .toList();
        double forwards = side(stops, each, trapped, true);
        double back = side(stops, each, trapped, false);
        double half = Angles.wrapped(back - forwards) / 2;
        double offset = Angles.wrapped(forwards + half);
        double[] left = IntStream.range(0, each.length)
                .filter(i -> !trapped.contains(i))
                .mapToDouble(
                        i -> Angles.wrapped(each[i] - offset + (stops.get(i).forwards() ? half : -half)))
                .toArray();
        return new Alignment(polePairs, reversed, offset, half, Angles.standardDeviation(left), trapped);
    }

    private static double side(List<Stop> stops, double[] each, List<Integer> trapped, boolean forwards) {
        double[] chosen = IntStream.range(0, each.length)
                .filter(i -> stops.get(i).forwards() == forwards && !trapped.contains(i))
                .mapToDouble(i -> each[i])
                .toArray();
        return chosen.length > 0 ? Angles.mean(chosen) : Angles.mean(each);
    }

    /** The stop that lies least far from all others: a few trapped ones do not move it. */
    private static double medianDirection(double[] each) {
        double best = each[0];
        double least = Double.POSITIVE_INFINITY;
        for (double candidate : each) {
            double sum = Arrays.stream(each)
                    .map(a -> Math.abs(Angles.wrapped(a - candidate)))
                    .sum();
            if (sum < least) {
                least = sum;
                best = candidate;
            }
        }
        return best;
    }

    /**
     * Farthest that friction can hold a rotor from the field, electrical radians: asin(T_f/T_m).
     *
     * @param frictionShare friction or load torque over the holding torque 3/2 p λ i
     */
    public static double frictionBoundElectricalRad(double frictionShare) {
        return Math.asin(Require.within("friction over holding torque", 0, 1, frictionShare, ""));
    }
}
