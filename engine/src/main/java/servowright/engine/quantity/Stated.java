package servowright.engine.quantity;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A figure as someone stated it: value, limits, unit, and in square brackets how it was meant.
 *
 * @param text       as it was written
 * @param spread     whether it is one value, a value with a tolerance, or a range to hold over
 * @param nominal    the value; of a range its middle
 * @param lower      lower limit
 * @param upper      upper limit
 * @param unit       unit it was written in
 * @param qualifiers the words in square brackets, lower case, in their order
 */
public record Stated(
        String text,
        Spread spread,
        Quantity nominal,
        Quantity lower,
        Quantity upper,
        Unit unit,
        List<String> qualifiers)
        implements ParsedQuantity {
    /** How the limits are meant. */
    public enum Spread {
        /** One value, no limits given. */
        VALUE,
        /** A value with a tolerance: the true one lies somewhere within. */
        TOLERANCE,
        /** A range that the machine passes through: all of it counts. */
        RANGE
    }

    public Stated {
        qualifiers = List.copyOf(qualifiers);
    }

    /** A plain value, as if {@code number unit} had been written. */
    public static Stated value(double number, String unit) {
        Unit u = Units.named(unit);
        Quantity q = u.quantity(number);
        return new Stated(number + " " + unit, Spread.VALUE, q, q, q, u, List.of());
    }

    public Dimension dimension() {
        return nominal.dimension();
    }

    /** Basis of a voltage, speed or back-EMF figure, if it was stated. */
    public Optional<VoltageBasis> voltageBasis() {
        return qualifier(VoltageBasis.values(), VoltageBasis::words);
    }

    /** Basis of a current or torque constant, if it was stated. */
    public Optional<CurrentBasis> currentBasis() {
        return qualifier(CurrentBasis.values(), CurrentBasis::words);
    }

    /** How a resistance or inductance was contacted, if it was stated. */
    public Optional<HookUp> hookUp() {
        return qualifier(HookUp.values(), HookUp::words);
    }

    /** On which side of the gear, if it was stated. */
    public Optional<Side> side() {
        return qualifier(Side.values(), Side::words);
    }

    /** What the instrument makes of an alternating voltage, if it was stated. */
    public Optional<Meter> meter() {
        return qualifier(Meter.values(), Meter::words);
    }

    /** Where it was taken from, if it was stated. */
    public Optional<StatedOrigin> origin() {
        return qualifier(StatedOrigin.values(), StatedOrigin::words);
    }

    /** Temperature it holds at, if it was stated. */
    public Optional<Quantity> temperature() {
        return qualifiers.stream()
                .map(Stated::asTemperature)
                .flatMap(Optional::stream)
                .findFirst();
    }

    /** Qualifiers that mean nothing here. */
    public List<String> unknownQualifiers() {
        return qualifiers.stream().filter(q -> !known(q)).toList();
    }

    private static boolean known(String q) {
        return matches(VoltageBasis.values(), VoltageBasis::words, q)
                || matches(CurrentBasis.values(), CurrentBasis::words, q)
                || matches(HookUp.values(), HookUp::words, q)
                || matches(Side.values(), Side::words, q)
                || matches(Meter.values(), Meter::words, q)
                || matches(StatedOrigin.values(), StatedOrigin::words, q)
                || asTemperature(q).isPresent();
    }

    private <T> Optional<T> qualifier(T[] values, Function<T, String> words) {
        return Arrays.stream(values)
                .filter(v -> qualifiers.contains(words.apply(v)))
                .findFirst();
    }

    private static <T> boolean matches(T[] values, Function<T, String> words, String q) {
        return Arrays.stream(values).anyMatch(v -> words.apply(v).equals(q));
    }

    /** The temperature that one of the words in square brackets is, if it is one. */
    public static Optional<Quantity> asTemperature(String qualifier) {
        return QuantityText.plain(qualifier)
                .filter(s -> s.dimension().equals(Dimension.TEMPERATURE))
                .map(Stated::nominal);
    }
}
