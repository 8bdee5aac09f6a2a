package servowright.engine.bench;

/**
 * How a figure that the bench can give is shown.
 *
 * @param words  its name in running text
 * @param symbol its symbol in formulas
 * @param unit   unit to show it in; empty for a pure number
 * @param settle what would give a value
 */
public record Caption(String words, String symbol, String unit, String settle) {}
