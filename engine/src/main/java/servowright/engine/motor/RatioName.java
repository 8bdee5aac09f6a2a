package servowright.engine.motor;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import servowright.engine.quantity.Require;

/**
 * A ratio that tells why two figures of one motor disagree: peak against RMS is √2, line against phase √3, and so on.
 *
 * @param words   how the ratio is written, for example {@code √2}
 * @param value   the ratio, not below 1
 * @param meaning what usually stands behind it
 */
public record RatioName(String words, double value, String meaning) {

    private static final List<RatioName> FIXED = List.of(
            new RatioName("1", 1, "the figures agree"),
            new RatioName("π/3", Math.PI / 3, "line peak against the mean of the rectified line voltage (six-step)"),
            new RatioName("2/√3", 2 / Math.sqrt(3), "per q-axis ampere against the direct-current rule 9.55/Kv"),
            new RatioName("√(3/2)", Math.sqrt(1.5), "line RMS against phase peak, or power-invariant scaling"),
            new RatioName("4/3", 4.0 / 3.0, "one terminal against two joined taken for two terminals"),
            new RatioName("√2", Math.sqrt(2), "peak against RMS"),
            new RatioName(
                    "3/2", 1.5, "torque per q-axis ampere against phase peak back-EMF, or delta coil against line"),
            new RatioName("3√3/π", 3 * Math.sqrt(3) / Math.PI, "six-step against phase peak"),
            new RatioName("√3", Math.sqrt(3), "line against phase"),
            new RatioName(
                    "2", 2, "magnets against pole pairs, peak to peak against peak, or two terminals against phase"),
            new RatioName("3/√2", 3 / Math.sqrt(2), "torque per phase RMS ampere against phase peak back-EMF"),
            new RatioName("√6", Math.sqrt(6), "line peak against phase RMS"),
            new RatioName("3", 3, "three phases against one, or delta coil against the equivalent star"),
            new RatioName("4", 4, "a factor 2 made twice"),
            new RatioName("2π", 2 * Math.PI, "turns against radians"),
            new RatioName("60/2π", 30 / Math.PI, "rpm against rad/s"));

    /** Refuses a ratio below 1; the inverse is found by {@link Match#inverted()}. */
    public RatioName {
        Require.within("named ratio", 1, Double.MAX_VALUE, value, "");
    }

    /** The pole pairs of the motor, as a ratio: mechanical against electrical. */
    public static RatioName polePairs(int polePairs) {
        return new RatioName(
                "pole pairs (" + Require.atLeast("pole pairs", 1, polePairs) + ")",
                polePairs,
                "electrical against mechanical angle or speed");
    }

    /** A gear ratio: motor side against load side. A step-up gear counts by its inverse. */
    public static RatioName gear(double motorTurnsPerLoadTurn) {
        double ratio = Require.positive("gear ratio", motorTurnsPerLoadTurn, "");
        String words = String.format(Locale.ROOT, "gear (%s)", ratio);
        return new RatioName(words, Math.max(ratio, 1 / ratio), "motor side against load side");
    }

    /**
     * A named ratio near a found one.
     *
     * @param name        the named ratio
     * @param inverted    true if the found ratio is near 1 / {@code name.value()}
     * @param relativeOff found ratio over named one, less 1
     */
    public record Match(RatioName name, boolean inverted, double relativeOff) {
        /** The ratio as written, with its inverse as {@code 1/(..)}. */
        public String words() {
            if (!inverted) {
                return name.words();
            }
            return name.words().contains("/") ? "1/(" + name.words() + ")" : "1/" + name.words();
        }
    }

    /**
     * Names that fit a ratio, nearest first.
     *
     * @param ratio     the ratio found, above 0; below 1 it is compared by its inverse
     * @param tolerance largest relative distance, for example 0.03; names closer to one another than this are all given
     * @param also      ratios of this machine to try as well: {@link #polePairs}, {@link #gear}
     */
    public static List<Match> fitting(double ratio, double tolerance, List<RatioName> also) {
        Require.positive("ratio", ratio, "");
        Require.positive("tolerance", tolerance, "");
        boolean inverted = ratio < 1;
        List<RatioName> names = new ArrayList<>(FIXED);
        names.addAll(also);
        return names.stream()
                .map(name -> match(name, ratio, inverted))
                .filter(match -> Math.abs(match.relativeOff()) <= tolerance)
                .sorted(Comparator.comparingDouble(match -> Math.abs(match.relativeOff())))
                .toList();
    }

    /** The nearest of {@link #fitting}, if any. */
    public static Optional<Match> nearest(double ratio, double tolerance, List<RatioName> also) {
        return fitting(ratio, tolerance, also).stream().findFirst();
    }

    private static Match match(RatioName name, double ratio, boolean inverted) {
        boolean upsideDown = inverted && name.value() > 1;
        double named = upsideDown ? 1 / name.value() : name.value();
        return new Match(name, upsideDown, ratio / named - 1);
    }
}
