package servowright.engine.quantity;

/**
 * A unit: SI value = number times factor plus offset.
 *
 * @param symbol    as it is written, for example {@code rpm/V}
 * @param dimension what it measures
 * @param factor    SI value of one unit
 * @param offset    SI value of zero; other than 0 only for degrees Celsius and Fahrenheit
 */
public record Unit(String symbol, Dimension dimension, double factor, double offset) {
    public Unit {
        Require.positive("factor of the unit " + symbol, factor, "");
        Require.finite("offset of the unit " + symbol, offset, "");
    }

    /** A unit whose zero is the SI zero. */
    public static Unit of(String symbol, Dimension dimension, double factor) {
        return new Unit(symbol, dimension, factor, 0);
    }

    /** SI value of {@code number} of this unit. */
    public double toSi(double number) {
        return number * factor + offset;
    }

    /** How many of this unit make up the SI value. */
    public double fromSi(double si) {
        return (si - offset) / factor;
    }

    /** {@code number} of this unit. */
    public Quantity quantity(double number) {
        return new Quantity(toSi(number), dimension);
    }

    /** A difference of {@code number} of this unit: without the offset of a temperature scale. */
    public Quantity difference(double number) {
        return new Quantity(number * factor, dimension);
    }

    Unit renamed(String otherSymbol) {
        return new Unit(otherSymbol, dimension, factor, offset);
    }
}
