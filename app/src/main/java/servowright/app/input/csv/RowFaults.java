package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.List;
import servowright.engine.recording.Remark;

/** What was wrong with rows of a data block, counted while they go by. */
final class RowFaults {
    private long shortRows;
    private long firstShort;
    private long skipped;
    private long firstSkipped;
    private final long[] noNumbers;
    private final long[] firstNoNumber;
    private boolean halfLastLine;

    RowFaults(int slots) {
        noNumbers = new long[slots];
        firstNoNumber = new long[slots];
    }

    void shortRow(long row) {
        firstShort = shortRows++ == 0 ? row : firstShort;
    }

    void skipped(long line) {
        firstSkipped = skipped++ == 0 ? line : firstSkipped;
    }

    void noNumber(int slot, long row) {
        firstNoNumber[slot] = noNumbers[slot]++ == 0 ? row : firstNoNumber[slot];
    }

    void halfLastLine() {
        halfLastLine = true;
    }

    /** What was seen, with the channel names by slot. */
    List<Remark> remarks(List<String> names) {
        List<Remark> remarks = new ArrayList<>();
        for (int slot = 0; slot < noNumbers.length; slot++) {
            if (noNumbers[slot] > 0) {
                remarks.add(Remark.found(
                        Remark.Kind.NOT_A_NUMBER,
                        names.get(slot),
                        "cells without a number",
                        noNumbers[slot],
                        firstNoNumber[slot]));
            }
        }
        if (shortRows > 0) {
            String text = "rows with fewer cells than the others";
            remarks.add(Remark.found(Remark.Kind.SHORT_ROW, "file", text, shortRows, firstShort)
                    .handledBy("the missing cells hold no number"));
        }
        if (skipped > 0) {
            String text = "lines within the data that are no rows, the first is line " + firstSkipped + " of the file";
            remarks.add(Remark.found(Remark.Kind.LINE_SKIPPED, "file", text, skipped, 0)
                    .handledBy("left out"));
        }
        if (halfLastLine) {
            remarks.add(Remark.concluded(Remark.Kind.HALF_LAST_LINE, "file", "the last line breaks off")
                    .handledBy("left out"));
        }
        return remarks;
    }
}
