package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Where the rows of numbers stand.
 *
 * @param first index of its first line in the head
 * @param columns positions of the columns with data, rising
 * @param kinds how each of them is read
 * @param rows cells of the first rows, as text
 */
record DataBlock(int first, List<Integer> columns, List<ColumnKind> kinds, List<List<String>> rows) {
    private static final int LOOK = 400;

    /**
     * Finds the block: its columns are those that hold data in most lines, it starts with the first line that has data in all
     * of them and is followed by more of the same.
     */
    static Optional<DataBlock> find(List<List<String>> lines, Dialect dialect) {
        List<List<Cells.Kind>> kinds = lines.stream()
                .map(cells -> cells.stream()
                        .map(cell -> Cells.kind(cell, dialect.decimal()))
                        .toList())
                .toList();
        List<BitSet> masks = kinds.stream().map(DataBlock::mask).toList();
        BitSet usual = usual(masks);
        if (usual.isEmpty()) {
            return Optional.empty();
        }
        int first = first(masks, usual);
        List<List<String>> rows = new ArrayList<>();
        List<List<Cells.Kind>> seen = new ArrayList<>();
        for (int i = first; i < lines.size() && rows.size() < LOOK; i++) {
            if (masks.get(i).intersects(usual)) {
                rows.add(lines.get(i));
                seen.add(kinds.get(i));
            }
        }
        addSparse(usual, seen);
        List<Integer> columns = usual.stream().boxed().toList();
        List<ColumnKind> read = columns.stream().map(c -> kind(seen, c)).toList();
        return Optional.of(new DataBlock(first, columns, read, rows));
    }

    private static BitSet mask(List<Cells.Kind> kinds) {
        BitSet mask = new BitSet();
        for (int c = 0; c < kinds.size(); c++) {
            mask.set(c, kinds.get(c).data());
        }
        return mask;
    }

    private static BitSet usual(List<BitSet> masks) {
        Map<BitSet, Integer> seen = new HashMap<>();
        BitSet best = new BitSet();
        int most = 0;
        for (BitSet mask : masks) {
            int count = mask.isEmpty() ? 0 : seen.merge(mask, 1, Integer::sum);
            if (count > most || (count == most && count > 0 && mask.cardinality() > best.cardinality())) {
                most = count;
                best = mask;
            }
        }
        return (BitSet) best.clone();
    }

    private static int first(List<BitSet> masks, BitSet usual) {
        for (int i = 0; i < masks.size(); i++) {
            int following = 0;
            int matching = 0;
            for (int k = i; k < masks.size() && following < 4; k++) {
                if (!masks.get(k).isEmpty()) {
                    following++;
                    matching += holds(masks.get(k), usual) ? 1 : 0;
                }
            }
            if (holds(masks.get(i), usual) && matching >= Math.min(3, following)) {
                return i;
            }
        }
        return masks.indexOf(usual);
    }

    private static boolean holds(BitSet mask, BitSet usual) {
        BitSet missing = (BitSet) usual.clone();
        missing.andNot(mask);
        return missing.isEmpty();
    }

    /** Columns that hold data in a fifth of the rows or more, unless a word stands left of them: that is a preamble. */
    private static void addSparse(BitSet columns, List<List<Cells.Kind>> rows) {
        int width = rows.stream().mapToInt(List::size).max().orElse(0);
        for (int c = 0; c < width; c++) {
            int data = 0;
            int keyed = 0;
            for (List<Cells.Kind> row : rows) {
                boolean here = c < row.size() && row.get(c).data();
                boolean word = here && c > 0 && row.get(c - 1) == Cells.Kind.TEXT;
                data += here ? 1 : 0;
                keyed += word ? 1 : 0;
            }
            if (!columns.get(c) && data >= 0.2 * rows.size() && keyed <= 0.5 * data) {
                columns.set(c);
            }
        }
    }

    private static ColumnKind kind(List<List<Cells.Kind>> rows, int column) {
        Map<Cells.Kind, Integer> seen = new EnumMap<>(Cells.Kind.class);
        for (List<Cells.Kind> row : rows) {
            if (column < row.size()) {
                seen.merge(row.get(column), 1, Integer::sum);
            }
        }
        int half = rows.size() / 2;
        if (seen.getOrDefault(Cells.Kind.LONG_COUNT, 0) > half) {
            return ColumnKind.LONG_COUNT;
        }
        if (seen.getOrDefault(Cells.Kind.TIME_OF_DAY, 0) > half) {
            return ColumnKind.TIME_OF_DAY;
        }
        return seen.getOrDefault(Cells.Kind.CALENDAR, 0) > half ? ColumnKind.CALENDAR : ColumnKind.NUMBER;
    }

    int width() {
        return columns.size();
    }

    /** The first rows of column {@code k} of the block as numbers; NaN where there is none. */
    double[] sample(int k, char decimal) {
        OddCell odd = new OddCell(decimal);
        double[] sample = new double[rows.size()];
        for (int i = 0; i < sample.length; i++) {
            List<String> row = rows.get(i);
            int column = columns.get(k);
            sample[i] = column < row.size() ? odd.value(row.get(column), kinds.get(k)) : Double.NaN;
        }
        return sample;
    }
}
