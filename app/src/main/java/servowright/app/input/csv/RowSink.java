package servowright.app.input.csv;

/** Takes the rows of a data block one by one. The array is reused: keep the numbers, not the array. */
interface RowSink {
    /**
     * Takes one row.
     *
     * @param values the clock cell (if the layout has one) in slot 0, then one per channel; NaN where there is no number
     */
    void row(double[] values);
}
