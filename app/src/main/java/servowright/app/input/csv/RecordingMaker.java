package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import servowright.engine.known.Problem;
import servowright.engine.quantity.Unit;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.CounterWrap;
import servowright.engine.recording.DropOuts;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Remark;
import servowright.engine.recording.Saturation;

/** Turns stored columns into channels: units, scales and declared repairs applied, defects looked for and said. */
final class RecordingMaker {
    private static final List<String> LENGTH = List.of(
            "recordlength",
            "memorylength",
            "numberofdatapoints",
            "numberofsamplingdata",
            "samples",
            "numberofsamples",
            "points",
            "numberofpoints");

    private final String file;
    private final Layout layout;
    private final ReadingHints hints;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Remark> remarks = new ArrayList<>();

    RecordingMaker(String file, Layout layout, ReadingHints hints) {
        this.file = file;
        this.layout = layout;
        this.hints = hints;
    }

    ReadResult make(ColumnStore store, Clock clock, String hash, List<Remark> before, long rowsInFile) {
        remarks.addAll(before);
        length(rowsInFile);
        unknownNames();
        List<Channel> channels = new ArrayList<>();
        for (int k = 0; k < layout.columns().size(); k++) {
            channels.add(channel(layout.columns().get(k), store.take(k + 1)));
        }
        if (hints.every() > 1) {
            remarks.add(Remark.concluded(
                            Remark.Kind.THINNED,
                            "file",
                            "each row is the mean of " + hints.every() + " rows of the file")
                    .handledBy("as declared"));
        }
        if (hints.segment().isPresent()
                && hints.segment().getAsInt() > clock.segmentStarts().size()) {
            int given = hints.segment().getAsInt();
            problems.add(Ask.unknownName(
                    file,
                    "segment",
                    Integer.toString(given),
                    "there is no segment " + given,
                    "1 to " + clock.segmentStarts().size()));
        }
        if (!problems.isEmpty()) {
            return new ReadResult.Refused(problems);
        }
        Recording whole = new Recording(file, hash, clock, channels, remarks);
        return new ReadResult.Read(
                hints.segment().isPresent() ? whole.segment(hints.segment().getAsInt() - 1) : whole);
    }

    private void length(long rows) {
        if (hints.windowed()) {
            return;
        }
        layout.preamble().find(LENGTH).ifPresent(entry -> {
            double stated = Cells.value(entry.value(), '.');
            if (stated > 0 && stated != rows) {
                String text = String.format(Locale.ROOT, "the file states %.0f rows and has %d", stated, rows);
                remarks.add(Remark.concluded(Remark.Kind.LENGTH_DISAGREES, "file", text)
                        .handledBy("the rows there are were read"));
            }
        });
    }

    /** Names of channels that the user declares and the file does not have. */
    private void unknownNames() {
        Set<String> known = new HashSet<>();
        for (Layout.Column column : layout.columns()) {
            known.add(column.name());
            known.add(Integer.toString(column.position() + 1));
        }
        String list = String.join(
                ", ", layout.columns().stream().map(Layout.Column::name).toList());
        hints.channels().keySet().stream()
                .filter(n -> !known.contains(n))
                .sorted()
                .forEach(n ->
                        problems.add(Ask.unknownName(file, "channels", n, "there is no channel \"" + n + "\"", list)));
        hints.scales().keySet().stream()
                .filter(n -> !known.contains(n))
                .sorted()
                .forEach(n ->
                        problems.add(Ask.unknownName(file, "scale", n, "there is no channel \"" + n + "\"", list)));
    }

    private Channel channel(Layout.Column column, double[] raw) {
        String name = declared(hints.channels(), column).orElse(column.name());
        double[] samples = unwrapped(column, name, raw);
        Optional<ReadingHints.Scale> scale = declared(hints.scales(), column);
        saturated(name, samples);
        samples = dropOuts(name, samples);
        peaks(column, name);
        if (scale.isPresent()) {
            ReadingHints.Scale worth = scale.get();
            scale(samples, worth.perCount(), -worth.perCount() * worth.zeroCount());
            return si(name, worth.unit(), samples);
        }
        counts(column, samples);
        return si(name, column.unit(), samples);
    }

    private static Channel si(String name, Optional<Unit> unit, double[] samples) {
        unit.ifPresent(u -> scale(samples, u.factor(), u.offset()));
        return new Channel(name, unit, samples);
    }

    private static void scale(double[] samples, double factor, double offset) {
        if (factor != 1 || offset != 0) {
            for (int i = 0; i < samples.length; i++) {
                samples[i] = samples[i] * factor + offset;
            }
        }
    }

    private static <T> Optional<T> declared(Map<String, T> declarations, Layout.Column column) {
        return Optional.ofNullable(declarations.get(column.name()))
                .or(() -> Optional.ofNullable(declarations.get(Integer.toString(column.position() + 1))));
    }

    private double[] unwrapped(Layout.Column column, String name, double[] samples) {
        Optional<Double> modulus = declared(hints.wrapsAt(), column);
        if (modulus.isPresent()) {
            String text = String.format(Locale.ROOT, "the counter starts anew at %.0f", modulus.get());
            remarks.add(
                    Remark.concluded(Remark.Kind.COUNTER_WRAPPED, name, text).handledBy("counted on, as declared"));
            return CounterWrap.unwrapped(samples, modulus.get());
        }
        CounterWrap.find(samples).ifPresent(wrap -> {
            String text = String.format(Locale.ROOT, "looks like a counter that starts anew at %.0f", wrap.modulus());
            remarks.add(Remark.found(Remark.Kind.COUNTER_WRAPPED, name, text, wrap.count(), wrap.first() + 1L));
        });
        return samples;
    }

    private void saturated(String name, double[] samples) {
        Saturation.find(samples).ifPresent(s -> {
            String text = "stands at " + Shown.number(s.level()) + " again and again, as if cut off there";
            remarks.add(Remark.found(Remark.Kind.SATURATED, name, text, s.count(), s.first() + 1L));
        });
    }

    private double[] dropOuts(String name, double[] samples) {
        List<Integer> rows = DropOuts.find(samples);
        if (rows.isEmpty()) {
            return samples;
        }
        String text = "single samples of 0 between neighbours that are not";
        Remark remark = Remark.found(Remark.Kind.DROP_OUT, name, text, rows.size(), rows.get(0) + 1L);
        boolean repair = hints.repairDropOuts();
        remarks.add(repair ? remark.handledBy("replaced by the mean of the neighbours, as declared") : remark);
        return repair ? DropOuts.repaired(samples, rows) : samples;
    }

    private void peaks(Layout.Column column, String name) {
        if (Preamble.plain(column.name()).contains("peakdetect")) {
            String text = "holds the largest and the smallest value in turn, not one sample per row";
            remarks.add(Remark.concluded(Remark.Kind.PEAK_PAIRS, name, text));
        }
    }

    /** Whole numbers with a vertical scale beside them that such volts would not fit on. */
    private void counts(Layout.Column column, double[] samples) {
        double perDivision = layout.preamble()
                .find(List.of("verticalscale"))
                .map(e -> Cells.value(e.value(), '.'))
                .orElse(Double.NaN);
        boolean whole = Arrays.stream(samples).allMatch(v -> v == Math.rint(v));
        if (!(perDivision > 0) || !whole) {
            return;
        }
        double most = Arrays.stream(samples).map(Math::abs).max().orElse(0);
        if (most > 10 * perDivision || (most >= 2 && perDivision < 25)) {
            String statement = String.format(
                    Locale.ROOT,
                    "channel %s holds counts of up to %.0f at %s per division; the file does not say what one count is worth",
                    column.name(),
                    most,
                    perDivision);
            problems.add(Ask.scale(file, column.name(), statement));
        }
    }
}
