package servowright.engine.known;

import java.util.Collections;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import servowright.engine.numeric.Quantile;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.Quantity;
import servowright.engine.quantity.Require;

/**
 * A figure with its uncertainty and origin.
 *
 * <p>The standard uncertainty is the root of the sum of the squared parts, \( u^2 = \sum_s c_s^2 \); the covariance of two
 * figures is the sum over their common sources, \( u(x, y) = \sum_s c_s(x)\, c_s(y) \). <b>Source.</b> JCGM 100:2008,
 * 5.1.2 and 5.2.2; effective degrees of freedom by Welch-Satterthwaite, annex G.4.1, equation (G.2b).
 *
 * @param value   best estimate
 * @param parts   contribution of each independent source to the estimate, SI, with sign
 * @param origin  where it comes from
 * @param restsOn the origins of everything that went into it; for a figure taken from outside just its own
 * @param from    the place in words: {@code machine.yaml:14}, {@code recordings/hub-spin-1.csv}; may be empty
 */
public record Known(Quantity value, SortedMap<Source, Double> parts, Origin origin, Set<Origin> restsOn, String from) {
    /** Coverage factor for 95 % of a normal distribution. */
    private static final double NORMAL_FACTOR = 1.959963984540054;

    public Known {
        parts = Collections.unmodifiableSortedMap(new TreeMap<>(parts));
        parts.forEach((source, c) -> {
            if (!Double.isFinite(c)) {
                throw new IllegalArgumentException("the part of " + source.id() + " must be finite, was " + c);
            }
        });
        restsOn = Collections.unmodifiableSet(EnumSet.copyOf(restsOn));
    }

    /** A figure without uncertainty. */
    public static Known exact(Quantity value, Origin origin, String from) {
        return new Known(value, new TreeMap<>(), origin, Set.of(origin), from);
    }

    /** A counted or defined number. */
    public static Known number(double value, Origin origin, String from) {
        return exact(Quantity.number(value), origin, from);
    }

    /** A figure with one source of uncertainty of its own; {@code standardUncertainty} in SI. */
    public static Known of(Quantity value, double standardUncertainty, Source source, Origin origin, String from) {
        Require.notNegative(
                "standard uncertainty", standardUncertainty, value.dimension().symbol());
        TreeMap<Source, Double> parts = new TreeMap<>();
        if (standardUncertainty > 0) {
            parts.put(source, standardUncertainty);
        }
        return new Known(value, parts, origin, Set.of(origin), from);
    }

    @Override
    public int hashCode() {
        return value.hashCode();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Known known
                        && value.equals(known.value)
                        && origin == known.origin
                        && from.equals(known.from)
                        && restsOn.equals(known.restsOn)
                        && parts.equals(known.parts));
    }

    /** Value in SI. */
    public double si() {
        return value.si();
    }

    public Dimension dimension() {
        return value.dimension();
    }

    /** Standard uncertainty, SI. */
    public double standardUncertainty() {
        double sum = 0;
        for (double c : parts.values()) {
            sum += c * c;
        }
        return Math.sqrt(sum);
    }

    /** Standard uncertainty divided by the size of the value; infinite for a value of zero. */
    public double relativeUncertainty() {
        return standardUncertainty() / Math.abs(si());
    }

    /** Covariance with another figure, the product of both SI units. */
    public double covariance(Known other) {
        double sum = 0;
        for (Map.Entry<Source, Double> part : parts.entrySet()) {
            sum += part.getValue() * other.parts.getOrDefault(part.getKey(), 0.0);
        }
        return sum;
    }

    /** Correlation coefficient with another figure; 0 when one of them has no uncertainty. */
    public double correlation(Known other) {
        double both = standardUncertainty() * other.standardUncertainty();
        return both == 0 ? 0 : covariance(other) / both;
    }

    /** Effective degrees of freedom; infinite without uncertainty. */
    public double degreesOfFreedom() {
        Map<String, Double> square = new HashMap<>();
        Map<String, Double> freedom = new HashMap<>();
        double total = 0;
        for (Map.Entry<Source, Double> part : parts.entrySet()) {
            double c2 = part.getValue() * part.getValue();
            Source source = part.getKey();
            total += c2;
            square.merge(source.group(), c2, Double::sum);
            freedom.merge(source.group(), source.degreesOfFreedom(), Math::min);
        }
        double sum = 0;
        for (Map.Entry<String, Double> group : square.entrySet()) {
            double c2 = group.getValue();
            sum += c2 * c2 / freedom.getOrDefault(group.getKey(), Double.POSITIVE_INFINITY);
        }
        return sum == 0 ? Double.POSITIVE_INFINITY : total * total / sum;
    }

    /**
     * Half-width of the interval that holds the truth with 95 %: the standard uncertainty times Student's t for the
     * effective degrees of freedom. <b>Source.</b> JCGM 100:2008, 6.2 and annex G.3.2, G.4.1.
     */
    public double expandedUncertainty() {
        double u = standardUncertainty();
        double freedom = degreesOfFreedom();
        if (u == 0 || Double.isInfinite(freedom)) {
            return NORMAL_FACTOR * u;
        }
        return Quantile.coverageFactor(0.95, freedom) * u;
    }

    /** The same figure with a further, independent source of uncertainty; {@code standardUncertainty} in SI. */
    public Known withPart(Source source, double standardUncertainty) {
        TreeMap<Source, Double> more = new TreeMap<>(parts);
        more.merge(source, standardUncertainty, (a, b) -> Math.copySign(Math.hypot(a, b), a));
        return new Known(value, more, origin, restsOn, from);
    }

    /** The same figure, said to come from elsewhere. */
    public Known as(Origin otherOrigin, String otherFrom) {
        EnumSet<Origin> all = EnumSet.copyOf(restsOn);
        all.add(otherOrigin);
        return new Known(value, parts, otherOrigin, all, otherFrom);
    }

    public Known plus(Known other) {
        return Propagation.linear(value.dimension(), si() + other.si(), List.of(this, other), 1, 1);
    }

    public Known minus(Known other) {
        return Propagation.linear(value.dimension(), si() - other.si(), List.of(this, other), 1, -1);
    }

    public Known times(Known other) {
        Dimension d = dimension().times(other.dimension());
        return Propagation.linear(d, si() * other.si(), List.of(this, other), other.si(), si());
    }

    public Known over(Known other) {
        Dimension d = dimension().over(other.dimension());
        double ratio = si() / other.si();
        return Propagation.linear(d, ratio, List.of(this, other), 1 / other.si(), -ratio / other.si());
    }

    /** Times a number without uncertainty. */
    public Known times(double factor) {
        return Propagation.linear(dimension(), si() * factor, List.of(this), factor);
    }
}
