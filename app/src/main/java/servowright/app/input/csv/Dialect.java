package servowright.app.input.csv;

/**
 * How a line falls into cells.
 *
 * @param delimiter between cells; a blank stands for any run of blanks and tabs
 * @param decimal mark in numbers
 * @param clockPrefix whether each line starts with a time of day and an arrow, as serial monitors write them
 */
record Dialect(char delimiter, char decimal, boolean clockPrefix) {
    boolean blanks() {
        return delimiter == ' ';
    }

    /** In words, for the remark on the layout. */
    String words() {
        String between = switch (delimiter) {
            case ',' -> "commas";
            case ';' -> "semicolons";
            case '\t' -> "tabs";
            case ' ' -> "blanks";
            default -> "\"" + delimiter + "\"";
        };
        return between + " between cells, decimal " + (decimal == ',' ? "comma" : "point")
                + (clockPrefix ? ", a time of day before each row" : "");
    }
}
