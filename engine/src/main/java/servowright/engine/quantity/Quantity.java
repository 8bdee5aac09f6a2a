package servowright.engine.quantity;

import org.jspecify.annotations.Nullable;

/**
 * A value with its dimension, held in SI units (temperatures in kelvin, angles in radian).
 *
 * @param si        value in the coherent SI unit of the dimension; finite
 * @param dimension what it measures
 */
public record Quantity(double si, Dimension dimension) {
    public Quantity {
        Require.finite("a quantity", si, dimension.symbol());
    }

    @Override
    public int hashCode() {
        return Double.hashCode(si);
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Quantity quantity
                        && Double.compare(si, quantity.si) == 0
                        && dimension.equals(quantity.dimension));
    }

    /** {@code value} of the unit written as {@code unit}, for example {@code Quantity.of(150, "rpm/V")}. */
    public static Quantity of(double value, String unit) {
        return Units.named(unit).quantity(value);
    }

    /** A pure number. */
    public static Quantity number(double value) {
        return new Quantity(value, Dimension.NUMBER);
    }

    /** The value counted in {@code unit}. */
    public double in(Unit unit) {
        if (!unit.dimension().equals(dimension)) {
            throw new IllegalArgumentException(
                    "a figure in " + dimension.symbol() + " cannot be counted in " + unit.symbol());
        }
        return unit.fromSi(si);
    }

    /** The value counted in the unit written as {@code unit}. */
    public double in(String unit) {
        return in(Units.named(unit));
    }

    /** The same dimension with another SI value. */
    public Quantity with(double otherSi) {
        return new Quantity(otherSi, dimension);
    }
}
