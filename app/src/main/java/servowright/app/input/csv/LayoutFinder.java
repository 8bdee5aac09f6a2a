package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Remark;

/** Puts the findings about a file's head together. */
final class LayoutFinder {
    private static final List<String> SOURCE = List.of("source", "channel", "channelname", "label");
    private static final List<String> VERTICAL =
            List.of("verticalunits", "verticalunit", "yunits", "yunit", "unit", "units");
    private static final Set<String> GENERIC = Set.of("", "data", "waveformdata", "values", "samples", "value", "ampl");

    private final String file;
    private final Head head;
    private final ReadingHints hints;
    private final List<Remark> remarks = new ArrayList<>();

    LayoutFinder(String file, Head head, ReadingHints hints) {
        this.file = file;
        this.head = head;
        this.hints = hints;
    }

    /** A layout, or the problems in its way. */
    sealed interface Found {
        record Laid(Layout layout) implements Found {}

        record Refused(List<Problem> problems) implements Found {}
    }

    Found find() {
        Dialect dialect = DialectFinder.find(head.lines(), hints);
        List<String> text = head.lines();
        List<Boolean> comments = text.stream().map(Preamble::comment).toList();
        List<List<String>> lines = new ArrayList<>();
        List<List<String>> rows = new ArrayList<>();
        for (int i = 0; i < text.size(); i++) {
            List<String> cells =
                    Cells.split(comments.get(i) ? Preamble.uncommented(text.get(i)) : text.get(i), dialect);
            lines.add(cells);
            rows.add(comments.get(i) ? List.of() : cells);
        }
        Optional<DataBlock> block = DataBlock.find(rows, dialect);
        if (block.isEmpty()) {
            return refused(Ask.unreadable(file, 0, "no rows of numbers were found in it", "Is it the right file?"));
        }
        Headings headings = Headings.find(lines, comments, block.get());
        Preamble preamble = preamble(text, lines, comments, block.get(), headings);
        ClockFinder.Found clock = new ClockFinder(file, block.get(), headings, preamble, dialect, hints).find();
        if (clock instanceof ClockFinder.Found.Question question) {
            return refused(question.problem());
        }
        ClockFinder.Found.Plan plan = (ClockFinder.Found.Plan) clock;
        remarks.add(Remark.concluded(
                Remark.Kind.LAYOUT,
                "file",
                head.encoding().words() + ", " + dialect.words() + ", rows from line "
                        + (block.get().first() + 1) + " on"));
        if (!head.clean()) {
            String odd = "some characters are not valid UTF-8";
            remarks.add(Remark.concluded(Remark.Kind.BAD_CHARACTER, "file", odd).handledBy("read as Latin-1"));
        }
        remarks.addAll(plan.remarks());
        return laid(dialect, block.get(), headings, preamble, plan.clock());
    }

    private static Found refused(Problem problem) {
        return new Found.Refused(List.of(problem));
    }

    private Found laid(Dialect dialect, DataBlock block, Headings headings, Preamble preamble, ClockPlan clock) {
        List<Layout.Column> columns = columns(dialect, block, headings, preamble, clock);
        if (columns.isEmpty()) {
            return refused(Ask.unreadable(file, 0, "it has a time and no channel", "Is it the right file?"));
        }
        boolean timed = clock.hasColumn();
        return new Found.Laid(new Layout(
                dialect,
                head.offsets().get(block.first()),
                block.first() + 1,
                columns,
                timed ? block.columns().get(clock.column()) : -1,
                timed ? block.kinds().get(clock.column()) : ColumnKind.NUMBER,
                clock,
                preamble,
                remarks));
    }

    private static Preamble preamble(
            List<String> text, List<List<String>> lines, List<Boolean> comments, DataBlock block, Headings headings) {
        List<Preamble.Entry> entries = new ArrayList<>(headings.beside());
        int beside = Math.min(lines.size(), block.first() + 100);
        for (int i = 0; i < beside; i++) {
            if (comments.get(i)) {
                entries.addAll(Preamble.comments(i + 1, text.get(i)));
            } else {
                int before = i < block.first()
                        ? lines.get(i).size()
                        : block.columns().get(0);
                List<String> cells =
                        lines.get(i).subList(0, Math.min(before, lines.get(i).size()));
                Preamble.entry(i + 1, cells).ifPresent(entries::add);
            }
        }
        return new Preamble(entries);
    }

    private List<Layout.Column> columns(
            Dialect dialect, DataBlock block, Headings headings, Preamble preamble, ClockPlan clock) {
        List<Integer> kept = kept(dialect, block, headings, clock);
        List<String> names = names(kept, block, headings, preamble);
        List<Layout.Column> columns = new ArrayList<>();
        for (int i = 0; i < kept.size(); i++) {
            int k = kept.get(i);
            int place = i;
            Optional<Unit> unit = headings.units().get(k).or(() -> vertical(preamble, place, kept.size()));
            columns.add(new Layout.Column(block.columns().get(k), block.kinds().get(k), names.get(i), unit));
        }
        return columns;
    }

    /** All columns but the clock, copies of others and those that the file calls unused. */
    private List<Integer> kept(Dialect dialect, DataBlock block, Headings headings, ClockPlan clock) {
        List<double[]> samples = new ArrayList<>();
        for (int k = 0; k < block.width(); k++) {
            samples.add(block.sample(k, dialect.decimal()));
        }
        List<Integer> kept = new ArrayList<>();
        for (int k = 0; k < block.width(); k++) {
            String name = headings.names().get(k);
            int original = original(samples, headings.names(), k);
            if (Preamble.plain(name).equals("notselected")) {
                leftOut(block, k, "is called \"" + name + "\"");
            } else if (original >= 0) {
                leftOut(
                        block,
                        k,
                        "repeats column " + (block.columns().get(original) + 1) + " in the first "
                                + samples.get(k).length + " rows");
            } else if (k != clock.column()) {
                kept.add(k);
            }
        }
        return kept;
    }

    private void leftOut(DataBlock block, int k, String why) {
        String text = "column " + (block.columns().get(k) + 1) + " " + why;
        remarks.add(Remark.concluded(Remark.Kind.COLUMN_LEFT_OUT, "file", text).handledBy("left out"));
    }

    /** The earlier column with the same changing values and the same name or none; -1 if there is none. */
    private static int original(List<double[]> samples, List<String> names, int k) {
        double[] mine = samples.get(k);
        boolean constant = Arrays.stream(mine).allMatch(v -> v == mine[0]);
        for (int earlier = 0; earlier < k && !constant; earlier++) {
            boolean named = names.get(k).isEmpty() || names.get(k).equals(names.get(earlier));
            if (named && mine.length > 2 && Arrays.equals(mine, samples.get(earlier))) {
                return earlier;
            }
        }
        return -1;
    }

    /** Headings, else the names that the preamble lists, else the column's number; no two alike. */
    private static List<String> names(List<Integer> kept, DataBlock block, Headings headings, Preamble preamble) {
        List<String> listed = listed(kept.size(), headings, kept, preamble);
        List<String> names = new ArrayList<>();
        for (int i = 0; i < kept.size(); i++) {
            int k = kept.get(i);
            String name = listed.isEmpty() ? headings.names().get(k) : listed.get(i);
            String base = name.isBlank() ? "column " + (block.columns().get(k) + 1) : name.strip();
            String free = base;
            for (int n = 2; names.contains(free); n++) {
                free = base + " " + n;
            }
            names.add(free);
        }
        return names;
    }

    private static List<String> listed(int count, Headings headings, List<Integer> kept, Preamble preamble) {
        long different =
                kept.stream().map(k -> headings.names().get(k)).distinct().count();
        boolean generic = kept.stream()
                .allMatch(k -> GENERIC.contains(Preamble.plain(headings.names().get(k))));
        if (different == count && !generic) {
            return List.of();
        }
        return preamble.entries().stream()
                .filter(e -> SOURCE.contains(e.key()) || e.key().startsWith("channel"))
                .map(Preamble.Entry::values)
                .filter(v -> v.size() == count && v.stream().distinct().count() == count)
                .filter(v -> v.stream().allMatch(w -> Cells.kind(w, '.') == Cells.Kind.TEXT && w.length() <= 20))
                .findFirst()
                .orElse(List.of());
    }

    private static Optional<Unit> vertical(Preamble preamble, int place, int count) {
        return preamble.find(VERTICAL)
                .filter(e -> e.values().size() == count || count == 1)
                .flatMap(e -> UnitWords.find(e.values().get(place)));
    }
}
