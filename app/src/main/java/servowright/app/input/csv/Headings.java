package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.quantity.Unit;

/**
 * What stands above the columns of a data block.
 *
 * @param names one per column, empty text where there is none
 * @param units one per column
 * @param indexed whether the first column counts rows
 * @param beside keys above columns that hold no data, with the value below them: {@code Start,Increment}
 */
record Headings(List<String> names, List<Optional<Unit>> units, boolean indexed, List<Preamble.Entry> beside) {
    private static final Set<String> NAME_KEYS =
            Set.of("name", "channelname", "signal", "signalname", "label", "channel");
    private static final Set<String> UNIT_KEYS = Set.of("unit", "units");
    private static final Set<String> INDEX = Set.of("sequence", "index", "sample", "point", "no", "nr");
    static final Set<String> TIME = Set.of(
            "time",
            "times",
            "timesec",
            "t",
            "x",
            "xaxis",
            "zeit",
            "temps",
            "tiempo",
            "tempo",
            "timestamp",
            "seconds",
            "second",
            "sec",
            "elapsed",
            "elapsedtime",
            "timescale");

    /** Finds the headings of a block among the lines above it. */
    static Headings find(List<List<String>> lines, List<Boolean> comments, DataBlock block) {
        Optional<List<String>> keyed = keyed(lines, block, NAME_KEYS);
        if (keyed.isPresent()) {
            List<Optional<Unit>> units = keyed(lines, block, UNIT_KEYS)
                    .map(Headings::units)
                    .orElseGet(() -> beneath(lines, comments, block));
            return of(keyed.get(), units, false, List.of());
        }
        int last = above(lines, comments, block.first());
        int before = above(lines, comments, last);
        if (last < 0) {
            return commented(lines, comments, block);
        }
        List<String> low = at(lines.get(last), block);
        List<String> high = before < 0 ? List.of() : at(lines.get(before), block);
        boolean named = before >= 0 && heads(high, low);
        if (unitsRow(low, named)) {
            boolean indexed = INDEX.contains(Preamble.plain(low.get(0)));
            List<String> names = named ? high : blanks(block.width());
            List<Preamble.Entry> beside = named ? beside(lines.get(before), lines.get(last), last, block) : List.of();
            return of(names, units(low), indexed, beside);
        }
        if (named
                && !timeName(low.get(0))
                && UnitWords.find(low.get(0)).filter(UnitWords::time).isPresent()) {
            return below(high, low);
        }
        return heads(low, List.of())
                ? of(low, noUnits(block.width()), INDEX.contains(Preamble.plain(low.get(0))), List.of())
                : commented(lines, comments, block);
    }

    /** Two rows of names, the lower one with the time's unit in its first cell: the lower names say more. */
    private static Headings below(List<String> high, List<String> low) {
        List<String> names = new ArrayList<>(low);
        names.set(0, high.get(0));
        List<Optional<Unit>> units = new ArrayList<>(noUnits(low.size()));
        units.set(0, UnitWords.find(low.get(0)));
        return of(names, units, false, List.of());
    }

    private static Headings of(
            List<String> raw, List<Optional<Unit>> row, boolean indexed, List<Preamble.Entry> beside) {
        List<String> names = new ArrayList<>();
        List<Optional<Unit>> units = new ArrayList<>();
        for (int k = 0; k < raw.size(); k++) {
            NameAndUnit heading = NameAndUnit.of(raw.get(k));
            names.add(row.get(k).isPresent() ? Cells.bare(raw.get(k)) : heading.name());
            units.add(row.get(k).or(heading::unit));
        }
        return new Headings(List.copyOf(names), List.copyOf(units), indexed, beside);
    }

    /** The last line above the block that starts with one of {@code keys} and has a word above most columns. */
    private static Optional<List<String>> keyed(List<List<String>> lines, DataBlock block, Set<String> keys) {
        for (int i = block.first() - 1; i >= 0; i--) {
            List<String> cells = lines.get(i);
            boolean first = !cells.isEmpty() && keys.contains(Preamble.plain(cells.get(0)));
            if (first && block.width() > 1 && words(at(cells, block)) > 0.6 * block.width()) {
                return Optional.of(at(cells, block).stream()
                        .map(c -> keys.contains(Preamble.plain(c)) ? "" : c)
                        .toList());
            }
        }
        return Optional.empty();
    }

    /** Units in a second row of headings, between the names and the block: {@code "Time (s)","Voltage (V)"}. */
    private static List<Optional<Unit>> beneath(List<List<String>> lines, List<Boolean> comments, DataBlock block) {
        int i = above(lines, comments, block.first());
        List<String> cells = i < 0 ? blanks(block.width()) : at(lines.get(i), block);
        return cells.stream()
                .map(c -> UnitWords.find(c).or(() -> NameAndUnit.of(c).unit()))
                .toList();
    }

    /** Names in the comment directly above the block, as numerical programs write them. */
    private static Headings commented(List<List<String>> lines, List<Boolean> comments, DataBlock block) {
        int i = block.first() - 1;
        while (i > 0 && lines.get(i).stream().allMatch(String::isEmpty)) {
            i--;
        }
        boolean names = i >= 0 && comments.get(i) && lines.get(i).size() == block.width();
        return of(names ? lines.get(i) : blanks(block.width()), noUnits(block.width()), false, List.of());
    }

    private static int above(List<List<String>> lines, List<Boolean> comments, int from) {
        for (int i = from - 1; i >= 0; i--) {
            if (!comments.get(i) && lines.get(i).stream().anyMatch(c -> !c.isEmpty())) {
                return i;
            }
        }
        return -1;
    }

    private static List<String> at(List<String> cells, DataBlock block) {
        return block.columns().stream()
                .map(c -> c < cells.size() ? cells.get(c) : "")
                .toList();
    }

    private static long words(List<String> cells) {
        return cells.stream().filter(c -> Cells.kind(c, '.') == Cells.Kind.TEXT).count();
    }

    /** Whether a row of cells can be names: a word above every column but the first, or bare channel numbers after a time. */
    private static boolean heads(List<String> cells, List<String> unitsBelow) {
        String first = cells.get(0);
        boolean time = timeName(first)
                || NameAndUnit.of(first).unit().filter(UnitWords::time).isPresent();
        boolean timeBelow = !unitsBelow.isEmpty()
                && UnitWords.find(unitsBelow.get(0)).filter(UnitWords::time).isPresent();
        if (timeBelow && !time && !first.isEmpty()) {
            return false;
        }
        long filled = cells.stream().filter(c -> !c.isEmpty()).count();
        boolean numbered = time && cells.size() > 1 && cells.stream().skip(1).allMatch(c -> c.matches("\\d{1,2}"));
        boolean worded = filled >= Math.max(1, cells.size() - 1) && words(cells) == filled;
        return worded || numbered;
    }

    /** Whether a name stands for the time. */
    static boolean timeName(String name) {
        return TIME.contains(Preamble.plain(NameAndUnit.of(name).name()));
    }

    private static boolean unitsRow(List<String> cells, boolean named) {
        boolean all = true;
        boolean plain = false;
        for (int k = 0; k < cells.size(); k++) {
            String cell = cells.get(k);
            boolean index = k == 0 && INDEX.contains(Preamble.plain(cell));
            all &= index || UnitWords.none(cell) || UnitWords.find(cell).isPresent();
            plain |= UnitWords.plainlyUnit(cell)
                    || (k == 0 && UnitWords.find(cell).filter(UnitWords::time).isPresent());
        }
        boolean some = cells.stream().anyMatch(c -> UnitWords.find(c).isPresent());
        return all && some && (named || plain);
    }

    private static List<Optional<Unit>> units(List<String> cells) {
        return cells.stream().map(UnitWords::find).toList();
    }

    private static List<Preamble.Entry> beside(List<String> names, List<String> below, int line, DataBlock block) {
        List<Preamble.Entry> entries = new ArrayList<>();
        for (int c = 0; c < Math.min(names.size(), below.size()); c++) {
            boolean number = Cells.kind(below.get(c), '.') == Cells.Kind.NUMBER;
            if (!block.columns().contains(c) && number && !names.get(c).isEmpty()) {
                entries.add(new Preamble.Entry(line + 1, Preamble.plain(names.get(c)), "", List.of(below.get(c))));
            }
        }
        return entries;
    }

    private static List<Optional<Unit>> noUnits(int n) {
        return Collections.nCopies(n, Optional.empty());
    }

    private static List<String> blanks(int n) {
        return Collections.nCopies(n, "");
    }
}
