package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Remark;

/**
 * What was concluded about a file before its data are read.
 *
 * @param dialect how lines fall into cells
 * @param skip bytes before the first row
 * @param firstLine number of the first row's line, from 1
 * @param columns the channels
 * @param clockPosition column of the clock in the file, -1 for none
 * @param clockKind how that column is read
 * @param clock how times are found
 * @param preamble keys and values around the data
 * @param remarks what was concluded
 */
record Layout(
        Dialect dialect,
        long skip,
        int firstLine,
        List<Column> columns,
        int clockPosition,
        ColumnKind clockKind,
        ClockPlan clock,
        Preamble preamble,
        List<Remark> remarks) {
    /**
     * A channel's column.
     *
     * @param position in the file, from 0
     * @param kind how its cells are read
     * @param name of the channel
     * @param unit stated for it
     */
    record Column(int position, ColumnKind kind, String name, Optional<Unit> unit) {}

    /** For each column of the file the slot in a row: 0 for the clock, then the channels; -1 for none. */
    int[] slots() {
        int width = clockPosition + 1;
        for (Column column : columns) {
            width = Math.max(width, column.position() + 1);
        }
        int[] slots = new int[width];
        Arrays.fill(slots, -1);
        if (clockPosition >= 0) {
            slots[clockPosition] = 0;
        }
        for (int k = 0; k < columns.size(); k++) {
            slots[columns.get(k).position()] = k + 1;
        }
        return slots;
    }

    /** How each column of the file is read. */
    ColumnKind[] kinds() {
        ColumnKind[] kinds = new ColumnKind[slots().length];
        Arrays.fill(kinds, ColumnKind.NUMBER);
        if (clockPosition >= 0) {
            kinds[clockPosition] = clockKind;
        }
        for (Column column : columns) {
            kinds[column.position()] = column.kind();
        }
        return kinds;
    }

    /** Names by slot. */
    List<String> slotNames() {
        List<String> names = new ArrayList<>(List.of("clock"));
        columns.forEach(c -> names.add(c.name()));
        return names;
    }
}
