package servowright.engine.bench;

/**
 * How a figure that the bench can give is shown.
 *
 * @param words  its name in running text
 * @param symbol its symbol in formulas
 * @param unit   unit to show it in; empty for a pure number
 * @param settle what would give a value
 */
public record Caption(String words, String symbol, String unit, String settle) {
    static final String WARMING =
            "record voltage and current of a steady heating current from cold until the housing stays as it is";
}
