package servowright.app.input.csv;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import servowright.engine.known.Problem;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Remark;

/**
 * Reads a text file with columns of numbers as a recording. The file is read once from front to back; only the numbers that
 * are asked for are held.
 */
public final class RecordingReader {
    private final Path path;
    private final String file;
    private final ReadingHints hints;

    private RecordingReader(Path path, String file, ReadingHints hints) {
        this.path = path;
        this.file = file;
        this.hints = hints;
    }

    /** The recording in a file, or what stands in the way. */
    public static ReadResult read(Path path, ReadingHints hints) {
        return read(path, String.valueOf(path.getFileName()), hints);
    }

    /**
     * The recording in a file, or what stands in the way.
     *
     * @param shown the file as the user knows it
     */
    public static ReadResult read(Path path, String shown, ReadingHints hints) {
        try {
            return new RecordingReader(path, shown, hints).read();
        } catch (IOException e) {
            return new ReadResult.Refused(List.of(unreadable(shown, e)));
        }
    }

    /** What one pass over a file of any size tells, or what stands in the way. */
    public static SummaryResult summarise(Path path, String shown, ReadingHints hints) {
        try {
            return new RecordingReader(path, shown, hints).summarise();
        } catch (IOException e) {
            return new SummaryResult.Refused(List.of(unreadable(shown, e)));
        }
    }

    private static Problem unreadable(String shown, IOException e) {
        return Ask.unreadable(
                shown, 0, "the file cannot be read: " + e.getClass().getSimpleName(), "Check its rights.");
    }

    private ReadResult read() throws IOException {
        LayoutFinder.Found found = layout();
        if (found instanceof LayoutFinder.Found.Refused refused) {
            return new ReadResult.Refused(refused.problems());
        }
        Layout layout = ((LayoutFinder.Found.Laid) found).layout();
        int slots = layout.columns().size() + 1;
        boolean keepClock = layout.clock().hasColumn();
        ColumnStore store = new ColumnStore(slots, keepClock, hints.budget());
        Pass pass = new Pass(layout, hints.every() > 1 ? new BlockMean(hints.every(), slots, store) : store);
        String hash = pass.run();
        if (pass.longLine > 0) {
            return new ReadResult.Refused(List.of(longLine(pass.longLine)));
        }
        if (store.overBudget()) {
            return new ReadResult.Refused(
                    List.of(Ask.budget(file, store.rows() * hints.every(), store.width(), hints.budget())));
        }
        if (store.rows() == 0) {
            String statement = hints.windowed() || hints.every() > 1 ? "no rows lie in the window" : "it has no rows";
            return new ReadResult.Refused(List.of(Ask.unreadable(file, 0, statement, "Check from, to and every.")));
        }
        return finish(layout, store, pass, hash);
    }

    private ReadResult finish(Layout layout, ColumnStore store, Pass pass, String hash) {
        ClockBuilder builder = new ClockBuilder(layout.clock(), hints);
        if (pass.track.wraps() > 0) {
            builder.wrapped(layout.clock().modulus().orElse(0), (long) pass.track.wraps(), 0);
        }
        Clock clock = layout.clock().hasColumn()
                ? builder.stamped(store.take(0), pass.parser.base())
                : builder.counted(store.firstClock(), (int) store.rows());
        List<Remark> remarks = new ArrayList<>(layout.remarks());
        remarks.addAll(builder.remarks());
        remarks.addAll(pass.remarks());
        return new RecordingMaker(file, layout, hints).make(store, clock, hash, remarks, pass.track.rows());
    }

    private SummaryResult summarise() throws IOException {
        LayoutFinder.Found found = layout();
        if (found instanceof LayoutFinder.Found.Refused refused) {
            return new SummaryResult.Refused(refused.problems());
        }
        Layout layout = ((LayoutFinder.Found.Laid) found).layout();
        Totals totals = new Totals(layout.columns().size());
        Pass pass = new Pass(layout, totals);
        pass.run();
        if (pass.longLine > 0) {
            return new SummaryResult.Refused(List.of(longLine(pass.longLine)));
        }
        List<Remark> remarks = new ArrayList<>(layout.remarks());
        remarks.addAll(pass.remarks());
        return new SummaryResult.Summed(
                new RecordingSummary(pass.track.kept(), pass.track.times(), totals.named(layout.columns()), remarks));
    }

    private Problem longLine(long line) {
        return Ask.unreadable(
                file, (int) Math.min(line, Integer.MAX_VALUE), "the line is longer than 1 MB", "Is it the right file?");
    }

    private LayoutFinder.Found layout() throws IOException {
        if (Files.isDirectory(path)) {
            return refused("it is a folder", "Name a file in it.");
        }
        if (!Files.exists(path)) {
            return new LayoutFinder.Found.Refused(List.of(Ask.missingFile(file)));
        }
        if (!Files.isRegularFile(path)) {
            return refused("it is not a regular file", "Name a file.");
        }
        if (Files.size(path) == 0) {
            return refused("it is empty", "Was the recording saved?");
        }
        Head head = Head.of(path);
        if (head.binary()) {
            return refused("it is not text", "Save the recording as text (CSV) and name that file.");
        }
        if (head.lines().isEmpty()) {
            return refused("its first line is longer than 256 kB", "Is it the right file?");
        }
        return new LayoutFinder(file, head, hints).find();
    }

    private LayoutFinder.Found refused(String statement, String remedy) {
        return new LayoutFinder.Found.Refused(List.of(Ask.unreadable(file, 0, statement, remedy)));
    }

    /** One pass over the rows of the file. */
    private final class Pass {
        private final Layout layout;
        private final RowFaults faults;
        private final RowParser parser;
        private final ClockTrack track;
        private long longLine;

        Pass(Layout layout, RowSink sink) {
            this.layout = layout;
            int slots = layout.columns().size() + 1;
            this.faults = new RowFaults(slots);
            this.parser = new RowParser(layout.dialect(), layout.slots(), layout.kinds(), slots, faults);
            this.track = new ClockTrack(layout.clock(), hints.fromS(), hints.toS(), sink);
        }

        /** Returns the hash of the file. */
        String run() throws IOException {
            try (ByteFeed feed = ByteFeed.open(path, true)) {
                longLine = parser.parse(feed, layout.skip(), layout.firstLine(), track);
                return longLine > 0 ? "" : feed.hash();
            }
        }

        List<Remark> remarks() {
            List<Remark> remarks = new ArrayList<>(faults.remarks(layout.slotNames()));
            if (track.untimed() > 0) {
                String text = "rows without a time";
                remarks.add(Remark.found(Remark.Kind.LINE_SKIPPED, "clock", text, track.untimed(), 0)
                        .handledBy("left out"));
            }
            return remarks;
        }
    }
}
