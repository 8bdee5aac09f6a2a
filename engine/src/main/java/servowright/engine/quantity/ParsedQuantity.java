package servowright.engine.quantity;

/** What came of reading a quantity: the figure as it was stated, or why it could not be read. */
public sealed interface ParsedQuantity permits Stated, ParsedQuantity.Malformed {
    /**
     * Text that is no quantity.
     *
     * @param text   as it was written
     * @param reason what is wrong with it
     * @param remedy how to write it
     */
    record Malformed(String text, String reason, String remedy) implements ParsedQuantity {}
}
