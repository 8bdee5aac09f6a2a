package servowright.engine.known;

import org.jspecify.annotations.Nullable;

/**
 * A figure under the symbol that a formula gives it.
 *
 * @param symbol as it stands in the formula
 * @param value  the figure
 * @param unit   unit to show it in; empty for the usual one of its dimension
 */
public record Term(String symbol, Known value, String unit) {
    @Override
    public int hashCode() {
        return symbol.hashCode();
    }

    @Override
    public boolean equals(@Nullable Object other) {
        return this == other
                || (other instanceof Term term
                        && symbol.equals(term.symbol)
                        && unit.equals(term.unit)
                        && value.equals(term.value));
    }

    public static Term of(String symbol, Known value) {
        return new Term(symbol, value, "");
    }

    public static Term of(String symbol, Known value, String unit) {
        return new Term(symbol, value, unit);
    }
}
