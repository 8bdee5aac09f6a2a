package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.List;

/** Keeps rows by column, in pieces, so that growing never copies; above its budget it only counts. */
final class ColumnStore implements RowSink {
    private static final int PIECE = 1 << 14;

    private final int firstSlot;
    private final List<List<double[]>> columns = new ArrayList<>();
    private final double[][] current;
    private final long mostRows;
    private int inPiece = PIECE;
    private long rows;
    private double firstClock = Double.NaN;

    /**
     * A store for rows of {@code slots} numbers.
     *
     * @param keepClock whether slot 0 is kept for each row; if not, only the first row's is
     */
    ColumnStore(int slots, boolean keepClock, long budget) {
        firstSlot = keepClock ? 0 : 1;
        int width = slots - firstSlot;
        mostRows = Math.min(budget / Math.max(1, width), Integer.MAX_VALUE - 8L);
        current = new double[width][];
        for (int k = 0; k < width; k++) {
            columns.add(new ArrayList<>());
        }
    }

    @Override
    public void row(double[] values) {
        if (rows == 0) {
            firstClock = values[0];
        }
        if (rows++ >= mostRows) {
            return;
        }
        if (inPiece == PIECE) {
            for (int k = 0; k < current.length; k++) {
                current[k] = new double[PIECE];
                columns.get(k).add(current[k]);
            }
            inPiece = 0;
        }
        for (int k = 0; k < current.length; k++) {
            current[k][inPiece] = values[firstSlot + k];
        }
        inPiece++;
    }

    long rows() {
        return rows;
    }

    int width() {
        return current.length;
    }

    boolean overBudget() {
        return rows > mostRows;
    }

    /** Clock number of the first row. */
    double firstClock() {
        return firstClock;
    }

    /** Hands out the numbers of a slot in one array and forgets them. */
    double[] take(int slot) {
        List<double[]> pieces = columns.get(slot - firstSlot);
        int n = (int) Math.min(rows, mostRows);
        double[] whole = new double[n];
        for (int p = 0; p * (long) PIECE < n; p++) {
            System.arraycopy(pieces.get(p), 0, whole, p * PIECE, Math.min(PIECE, n - p * PIECE));
        }
        pieces.clear();
        return whole;
    }
}
