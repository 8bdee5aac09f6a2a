package servowright.engine.motor;

import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import servowright.engine.numeric.BlockJackknife;
import servowright.engine.numeric.Design;
import servowright.engine.numeric.Reversals;
import servowright.engine.numeric.Statistics;
import servowright.engine.numeric.TurnMeans;
import servowright.engine.quantity.Require;

/**
 * A current that holds or slowly turns a shaft, over the angle: what depends on the position, and what on the sense.
 *
 * <p><b>Formula.</b> Means over small parts of a turn, forward i₊(θ) and back i₋(θ): position-dependent part (i₊ + i₋)/2,
 * friction (i₊ − i₋)/2. The orders that stand out of the position-dependent part are fitted together by least squares; its
 * range is the largest less the smallest of their sum. <b>Valid for</b> speeds so low that inertia takes no part. Friction of a shaft
 * held at rest is what it has to be, up to the largest: half the difference is the least it can be. <b>Source.</b> Superposition of an
 * even and an odd part in the sense of rotation; least squares.
 *
 * @param byPosition   position-dependent part in each part of the turn, A; not a number where it was not read
 * @param orders       orders per turn: those that stand out, the largest first, then those expected besides
 * @param standing     how many of them stand out
 * @param mean         their sum fitted to the position-dependent part
 * @param forward      the same orders fitted forward alone
 * @param back         and back alone; both are {@code mean} when the shaft turned one way only
 * @param range        largest less smallest of the sum over the turn
 * @param frictionAmp  half the difference of both senses; empty when the shaft turned one way only
 * @param frictionStandardAmp its standard deviation, from stretches of the turn left out
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose: the fit of one recording
public record CoggingFit(
        double[] byPosition,
        int[] orders,
        int standing,
        TurnCurve mean,
        TurnCurve forward,
        TurnCurve back,
        TurnCurve.Range range,
        OptionalDouble frictionAmp,
        double frictionStandardAmp) {
    private static final int MOST_PARTS = 2048;
    private static final int FEWEST_PARTS = 60;
    private static final double FILLED = 0.9;
    private static final int STRETCHES = 16;

    /** Orders up to this share of the parts are looked for: two and a half parts per wave. */
    private static final double HIGHEST = 0.4;

    private static final int MOST_ORDERS = 40;

    /** An amplitude above this many standard deviations of one component of the noise stands out: 1 in 3000 by chance. */
    private static final double STANDS_OUT = 4;

    /** Median of a Rayleigh distribution over the standard deviation of a component. */
    private static final double RAYLEIGH_MEDIAN = Math.sqrt(2 * Math.log(2));

    /**
     * Fits; empty unless angles all around the turn were read.
     *
     * @param rad angles, turns counted on or not
     * @param senses   of each sample: 1 forward, -1 back, from {@link Reversals}
     * @param expected orders that belong to the shape whether they stand out or not
     */
    public static Optional<CoggingFit> of(double[] rad, double[] amp, int[] senses, int... expected) {
        Require.atLeast("currents", rad.length, amp.length);
        Require.atLeast("senses", rad.length, senses.length);
        int[] forward = rows(senses, 1);
        int[] back = rows(senses, -1);
        boolean both = forward.length >= FEWEST_PARTS && back.length >= FEWEST_PARTS;
        int[] only = forward.length >= back.length ? forward : back;
        int most = Math.min(MOST_PARTS, both ? Math.min(forward.length, back.length) : only.length);
        for (int parts = most; parts >= FEWEST_PARTS; parts = parts * 7 / 8) {
            TurnSamples one = new TurnSamples(rad, amp, both ? forward : only, parts);
            TurnSamples other = both ? new TurnSamples(rad, amp, back, parts) : one;
            if (TurnMeans.filled(halves(one.means(), other.means(), 1)) >= FILLED) {
                return both ? bothWays(one, other, expected) : oneWay(one, expected);
            }
        }
        return Optional.empty();
    }

    private static int[] rows(int[] senses, int sense) {
        return IntStream.range(0, senses.length).filter(i -> senses[i] == sense).toArray();
    }

    private static double[] halves(double[] one, double[] other, int sign) {
        double[] half = new double[one.length];
        for (int k = 0; k < half.length; k++) {
            half[k] = (one[k] + sign * other[k]) / 2;
        }
        return half;
    }

    private static Optional<CoggingFit> oneWay(TurnSamples only, int[] expected) {
        int parts = only.means().length;
        int[] seen = standing(only.means(), only);
        int[] orders = joined(seen, expected, parts);
        return TurnCurve.of(orders, parts, only)
                .map(c -> new CoggingFit(
                        only.means(), orders, seen.length, c, c, c, c.range(), OptionalDouble.empty(), 0));
    }

    private static Optional<CoggingFit> bothWays(TurnSamples forward, TurnSamples back, int[] expected) {
        double[] byPosition = halves(forward.means(), back.means(), 1);
        int parts = byPosition.length;
        int[] seen = standing(byPosition, forward, back);
        int[] orders = joined(seen, expected, parts);
        Optional<TurnCurve> mean = TurnCurve.of(orders, parts, forward, back);
        Optional<TurnCurve> one = TurnCurve.of(orders, parts, forward);
        Optional<TurnCurve> other = TurnCurve.of(orders, parts, back);
        Optional<BlockJackknife> friction = friction(halves(forward.means(), back.means(), -1));
        if (mean.isEmpty() || one.isEmpty() || other.isEmpty() || friction.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new CoggingFit(
                byPosition,
                orders,
                seen.length,
                mean.get(),
                one.get(),
                other.get(),
                mean.get().range(),
                OptionalDouble.of(friction.get().parameter(0)),
                friction.get().standardError(0)));
    }

    /** Orders that stand out of the means, and still do when they are fitted together: where a sample lies within its part can feign one. */
    private static int[] standing(double[] byPosition, TurnSamples... senses) {
        int[] first = standingOut(byPosition);
        Optional<TurnCurve> curve = TurnCurve.of(first, byPosition.length, senses);
        return curve.isEmpty()
                ? new int[0]
                : IntStream.range(0, first.length)
                        .filter(j -> curve.get().amplitude(j)
                                > STANDS_OUT * curve.get().amplitudeStandard(j))
                        .map(j -> first[j])
                        .toArray();
    }

    /** Orders whose amplitude stands out of the noise, the largest first. */
    private static int[] standingOut(double[] byPosition) {
        int highest = (int) (HIGHEST * byPosition.length);
        double[] amplitudes = TurnMeans.amplitudes(byPosition, highest);
        double noise = Statistics.median(Arrays.copyOfRange(amplitudes, 1, highest + 1)) / RAYLEIGH_MEDIAN;
        return IntStream.rangeClosed(1, highest)
                .filter(o -> amplitudes[o] > STANDS_OUT * noise)
                .boxed()
                .sorted((a, b) -> Double.compare(amplitudes[b], amplitudes[a]))
                .limit(MOST_ORDERS)
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** The orders seen, then those expected and twice and three times the strongest, as far as the parts resolve them. */
    private static int[] joined(int[] seen, int[] expected, int parts) {
        IntStream more = seen.length == 0 ? IntStream.of() : IntStream.of(2 * seen[0], 3 * seen[0]);
        return IntStream.concat(IntStream.of(seen), IntStream.concat(IntStream.of(expected), more))
                .filter(o -> o <= HIGHEST * parts)
                .distinct()
                .toArray();
    }

    private static Optional<BlockJackknife> friction(double[] differences) {
        double[] filled =
                Arrays.stream(differences).filter(d -> !Double.isNaN(d)).toArray();
        double[] ones = new double[filled.length];
        Arrays.fill(ones, 1);
        return BlockJackknife.of(Design.ofColumns(ones), filled, STRETCHES);
    }

    /** Degrees of freedom of the friction's standard deviation. */
    public static double frictionFreedom() {
        return STRETCHES - 1.0;
    }

    /** Parts of a turn. */
    public int parts() {
        return byPosition.length;
    }

    /** Amplitude of an order; 0 where it does not stand out. */
    public double amplitude(int order) {
        return IntStream.range(0, standing)
                .filter(j -> orders[j] == order)
                .mapToDouble(mean::amplitude)
                .findFirst()
                .orElse(0);
    }

    /** Standard deviation of the amplitude of the order at an index: scatter, and both ways as limits. */
    public double amplitudeStandard(int index) {
        return Math.hypot(mean.amplitudeStandard(index), apart(forward.amplitude(index), back.amplitude(index)));
    }

    /** Largest less smallest of the sum of the orders, A. */
    public double rangeAmp() {
        return range.value();
    }

    /** Standard deviation of the range: scatter, and both ways as limits. */
    public double rangeStandardAmp() {
        return Math.hypot(range.standard(), apart(forward.plainRange(), back.plainRange()));
    }

    private static double apart(double one, double other) {
        return Math.abs(one - other) / 2 / Math.sqrt(3);
    }

    /** Root mean square of the position-dependent part about its mean, A. */
    public double rmsAmp() {
        return Statistics.standardDeviation(
                Arrays.stream(byPosition).filter(d -> !Double.isNaN(d)).toArray());
    }
}
