package servowright.app.input.csv;

import java.util.Arrays;

/** Passes on the means of so many rows, time included; a step back of the clock starts a new block. */
final class BlockMean implements RowSink {
    private final int n;
    private final RowSink next;
    private final double[] sums;
    private double last = Double.NaN;
    private int have;

    BlockMean(int n, int slots, RowSink next) {
        this.n = n;
        this.next = next;
        this.sums = new double[slots];
    }

    @Override
    public void row(double[] values) {
        if (values[0] < last) {
            clear();
        }
        last = values[0];
        for (int k = 0; k < sums.length; k++) {
            sums[k] += values[k];
        }
        have++;
        if (have == n) {
            for (int k = 0; k < sums.length; k++) {
                sums[k] /= n;
            }
            next.row(sums);
            clear();
        }
    }

    private void clear() {
        Arrays.fill(sums, 0);
        have = 0;
    }
}
