package servowright.engine.worksheet;

/**
 * One result of a worksheet.
 *
 * @param name    lower case with underscores, as cases and JSON name it
 * @param meaning what it is, in words, with its basis
 * @param unit    unit to show it in; empty for a pure number or a word
 */
public record Result(String name, String meaning, String unit) {}
