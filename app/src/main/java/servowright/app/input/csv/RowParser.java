package servowright.app.input.csv;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * The loop that turns the bytes of a data block into rows of numbers. It holds one buffer, whatever the size of the file.
 */
final class RowParser {
    /** A line longer than this is not a row of numbers. */
    static final int LONGEST_LINE = 1 << 20;

    /** Bytes behind the last one, so that no number runs over the end. */
    private static final int SLACK = 8;

    private final byte delimiter;
    private final boolean blanks;
    private final boolean clockPrefix;
    private final int[] slotOf;
    private final ColumnKind[] kindOf;
    private final boolean[] plain;
    private final NumberScanner scanner;
    private final OddCell odd;
    private final RowFaults faults;
    private final double[] values;
    private final int expected;
    private final byte[] buffer = new byte[LONGEST_LINE + SLACK];
    private int at;
    private int filled;
    private int numbers;
    private int without;
    private long rows;
    private long line;

    /**
     * A parser for one layout.
     *
     * @param slotOf for each column of the file the slot of its value, -1 when it is left out
     * @param kindOf how each column is read
     * @param slots how many slots a row has; slot 0 is the clock's
     */
    RowParser(Dialect dialect, int[] slotOf, ColumnKind[] kindOf, int slots, RowFaults faults) {
        this.delimiter = (byte) dialect.delimiter();
        this.blanks = dialect.blanks();
        this.clockPrefix = dialect.clockPrefix();
        this.slotOf = slotOf.clone();
        this.kindOf = kindOf.clone();
        this.plain = new boolean[slotOf.length];
        for (int k = 0; k < plain.length; k++) {
            plain[k] = slotOf[k] >= 0 && kindOf[k] == ColumnKind.NUMBER;
        }
        this.scanner = new NumberScanner(dialect.decimal());
        this.odd = new OddCell(dialect.decimal());
        this.faults = faults;
        this.values = new double[slots];
        this.expected = (int) Arrays.stream(slotOf).filter(slot -> slot >= 0).count();
    }

    /** What was taken off a column of long counts or dates. */
    long base() {
        return odd.base();
    }

    /**
     * Sends all rows from byte {@code skip} on to {@code sink}.
     *
     * @param firstLine number of the line at {@code skip}, counted from 1
     * @return 0, or the number of a line that is too long to be a row
     */
    long parse(ByteFeed feed, long skip, long firstLine, RowSink sink) throws IOException {
        line = firstLine;
        long left = skip;
        int have = 0;
        int got = 0;
        while (got >= 0) {
            got = feed.read(buffer, have, LONGEST_LINE - have);
            have += Math.max(0, got);
            int drop = (int) Math.min(left, have);
            left -= drop;
            int end = got < 0 ? have : lastLineEnd(have);
            if (end > drop) {
                boolean broken = got < 0 && buffer[end - 1] != '\n' && buffer[end - 1] != '\r';
                rows(drop, end, broken, sink);
            }
            end = Math.max(end, drop);
            System.arraycopy(buffer, end, buffer, 0, have - end);
            have -= end;
            if (have >= LONGEST_LINE - 4) {
                return line;
            }
        }
        return 0;
    }

    private int lastLineEnd(int have) {
        int end = have;
        while (end > 0 && buffer[end - 1] != '\n') {
            end--;
        }
        return end > 0 || have < LONGEST_LINE - 4 ? end : lastReturn(have);
    }

    /** Files with bare carriage returns as line ends. */
    private int lastReturn(int have) {
        int end = have;
        while (end > 0 && buffer[end - 1] != '\r') {
            end--;
        }
        return end;
    }

    /** Parses whole lines; {@code broken} says that the last one has no line end. */
    private void rows(int from, int end, boolean broken, RowSink sink) {
        byte kept = buffer[end];
        buffer[end] = '\n';
        at = from;
        while (at < end) {
            filled = 0;
            numbers = 0;
            without = 0;
            int start = at;
            cells();
            boolean last = at > end || (broken && at >= end);
            finish(start, last && broken, sink);
        }
        buffer[end] = kept;
    }

    private void finish(int start, boolean broken, RowSink sink) {
        if (numbers == 0) {
            if (!blank(start)) {
                faults.skipped(line);
            }
        } else if (broken && filled < expected) {
            faults.halfLastLine();
        } else {
            rows++;
            if (filled < expected) {
                faults.shortRow(rows);
            } else if (without > 0) {
                noNumbers();
            }
            sink.row(values);
        }
        line++;
    }

    private void noNumbers() {
        for (int slot : slotOf) {
            if (slot >= 0 && Double.isNaN(values[slot])) {
                faults.noNumber(slot, rows);
            }
        }
    }

    private boolean blank(int start) {
        for (int i = start; i < at; i++) {
            byte b = buffer[i];
            if ((b > ' ' && b != delimiter && b != '"') || b <= 0) {
                return false;
            }
        }
        return true;
    }

    /** Reads the cells of one line and leaves {@code at} behind its end. */
    private void cells() {
        int column = clockPrefix ? prefix() : 0;
        while (column < slotOf.length) {
            int behind = plain[column] ? scanner.scan(buffer, at) : -1;
            byte after = behind > 0 ? buffer[behind] : 0;
            if (after == delimiter) {
                at = behind + 1;
                take(slotOf[column++]);
            } else if (after == '\n' || after == '\r') {
                at = behind;
                take(slotOf[column]);
                lineEnd(column + 1);
                return;
            } else if (!oddCell(column++)) {
                return;
            }
        }
        at = rowEnd(at);
        lineEnd(column);
    }

    private void take(int slot) {
        values[slot] = scanner.value();
        filled++;
        numbers++;
    }

    /** Steps over the line end; columns from {@code missing} on were not there. */
    private void lineEnd(int missing) {
        for (int column = missing; column < slotOf.length; column++) {
            if (slotOf[column] >= 0) {
                values[slotOf[column]] = Double.NaN;
            }
        }
        boolean pair = buffer[at] == '\r' && buffer[at + 1] == '\n';
        at += pair ? 2 : 1;
    }

    /** Reads a cell that is not a bare number right up to its delimiter; returns whether the line goes on behind it. */
    private boolean oddCell(int column) {
        skipBlanks();
        if (buffer[at] == '\n' || buffer[at] == '\r') {
            lineEnd(column);
            return false;
        }
        int end = cellEnd(at);
        if (slotOf[column] >= 0) {
            cell(slotOf[column], kindOf[column], end);
        }
        at = end;
        if (buffer[at] == '\n' || buffer[at] == '\r') {
            lineEnd(column + 1);
            return false;
        }
        at++;
        return true;
    }

    private void cell(int slot, ColumnKind kind, int end) {
        int behind = kind == ColumnKind.NUMBER ? scanner.scan(buffer, at) : -1;
        while (behind > 0 && behind < end && buffer[behind] == ' ') {
            behind++;
        }
        if (behind == end) {
            take(slot);
            return;
        }
        String text = new String(buffer, at, Math.min(end - at, 500), StandardCharsets.ISO_8859_1);
        double value = odd.value(text.replace("\u00e2\u0088\u0092", "-"), kind);
        values[slot] = value;
        filled++;
        boolean number = !Double.isNaN(value);
        without += number ? 0 : 1;
        numbers += number || text.strip().equalsIgnoreCase("nan") ? 1 : 0;
    }

    private int rowEnd(int from) {
        int i = from;
        while (buffer[i] != '\n' && buffer[i] != '\r') {
            i++;
        }
        return i;
    }

    /** The end of the cell that starts at {@code from}: the delimiter or line end behind it, quotes respected. */
    private int cellEnd(int from) {
        int i = from;
        boolean quoted = false;
        while (buffer[i] != '\n' && buffer[i] != '\r') {
            byte b = buffer[i];
            quoted ^= b == '"';
            if (!quoted && (b == delimiter || (blanks && b == '\t'))) {
                break;
            }
            i++;
        }
        return i;
    }

    private void skipBlanks() {
        byte b = buffer[at];
        while (b == ' ' || (b == '\t' && (blanks || delimiter != '\t'))) {
            b = buffer[++at];
        }
    }

    /** Reads the time of day before the arrow; returns the number of the next column. */
    private int prefix() {
        skipBlanks();
        int i = at;
        while (buffer[i] != '\n' && buffer[i] != '\r' && buffer[i] != '>') {
            i++;
        }
        if (slotOf[0] >= 0) {
            values[slotOf[0]] = Double.NaN;
        }
        if (buffer[i] != '>') {
            return 1;
        }
        String text = new String(buffer, at, Math.min(i - at, 60), StandardCharsets.ISO_8859_1);
        if (text.endsWith("-") && slotOf[0] >= 0) {
            values[slotOf[0]] = odd.value(text.substring(0, text.length() - 1), kindOf[0]);
            filled++;
        }
        at = i + 1;
        return 1;
    }
}
