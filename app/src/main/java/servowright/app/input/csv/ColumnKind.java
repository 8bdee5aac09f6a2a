package servowright.app.input.csv;

/** How the cells of a column are read. */
enum ColumnKind {
    NUMBER,
    /** A count of more digits than a double holds: read as a 64-bit integer, first value taken off. */
    LONG_COUNT,
    /** {@code 13:40:58.340}: seconds since midnight. */
    TIME_OF_DAY,
    /** {@code 2022-02-24 14:09:15.986}: seconds since the first. */
    CALENDAR
}
