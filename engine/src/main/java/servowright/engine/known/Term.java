package servowright.engine.known;

/**
 * A figure under the symbol that a formula gives it.
 *
 * @param symbol as it stands in the formula
 * @param value  the figure
 * @param unit   unit to show it in; empty for the usual one of its dimension
 */
public record Term(String symbol, Known value, String unit) {
    public static Term of(String symbol, Known value) {
        return new Term(symbol, value, "");
    }

    public static Term of(String symbol, Known value, String unit) {
        return new Term(symbol, value, unit);
    }
}
