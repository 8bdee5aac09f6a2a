package servowright.app.input;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.app.input.csv.ReadingHints;
import servowright.app.input.form.RecordingFields;
import servowright.app.input.form.Value;
import servowright.app.input.form.Value.Part;
import servowright.app.input.tree.Problems;
import servowright.engine.known.Problem;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.quantity.QuantityText;
import servowright.engine.quantity.Stated;
import servowright.engine.quantity.Unit;
import servowright.engine.quantity.Units;

/** What a bench test says about its recording, for the reader of recordings. */
final class RecordingHints {
    private static final Pattern COLUMN = Pattern.compile("(.+?)\\s*\\[([^\\[\\]]+)\\]");
    private static final Pattern SCALE = Pattern.compile("(.*?)(?:,?\\s+zero at\\s+(-?\\d{1,9}(?:[.,]\\d{1,9})?))?");
    private static final Map<String, Character> MARKS =
            Map.of("comma", ',', "semicolon", ';', "tab", '\t', "blank", ' ', "point", '.');

    /**
     * Most numbers held of one recording. Fitting a curve takes a dozen numbers of working for each, 8 bytes every one.
     */
    private static final long NUMBERS_AT_ONCE =
            Math.min(ReadingHints.USUAL_BUDGET, Runtime.getRuntime().maxMemory() / (16 * 8));

    private final Part test;
    private final Problems problems;
    private final ReadingHints.Builder hints = ReadingHints.declare();

    private RecordingHints(Part test, Problems problems) {
        this.test = test;
        this.problems = problems;
    }

    /** The hints of a test. Each channel it speaks of keeps its name, so that a name the file lacks is found. */
    static ReadingHints of(Part test, Problems problems) {
        RecordingHints read = new RecordingHints(test, problems);
        read.hints.budget(NUMBERS_AT_ONCE);
        read.clock();
        read.stretch();
        test.texts("channels").keySet().forEach(c -> read.hints.channel(c, c));
        test.words("delimiter").map(MARKS::get).ifPresent(read.hints::delimiter);
        test.words("decimal").map(MARKS::get).ifPresent(read.hints::decimal);
        test.words("drop_outs").filter("repair"::equals).ifPresent(word -> read.hints.repairDropOuts());
        test.part("counter_wraps_at")
                .values()
                .keySet()
                .forEach(channel -> test.part("counter_wraps_at")
                        .figure(channel)
                        .ifPresent(d -> read.hints.wrapsAt(channel, d.si())));
        read.scales();
        return read.hints.build();
    }

    private void clock() {
        number(TestFigure.SAMPLE_INTERVAL.key().path()).ifPresent(hints::sampleInterval);
        test.words(TestFigure.SAMPLE_INTERVAL.key().path())
                .filter(RecordingFields.NO_CLOCK::equals)
                .ifPresent(word -> hints.orderOnly());
        test.at("time_column").ifPresent(v -> {
            Matcher m = COLUMN.matcher(((Value.Words) v).text());
            Optional<Unit> unit = m.matches()
                    ? Units.find(m.group(2)).filter(u -> u.dimension().equals(Dimension.TIME))
                    : Optional.empty();
            unit.ifPresentOrElse(
                    u -> hints.timeColumn(m.group(1), u),
                    () -> cannot(v, "names no column with a unit of time", "Write it like 1 [ms] or Time [s]."));
        });
    }

    private void stretch() {
        number(RecordingFields.FROM.key().path()).ifPresent(hints::from);
        number(RecordingFields.TO.key().path()).ifPresent(hints::to);
        number(RecordingFields.EVERY.key().path()).ifPresent(n -> hints.every((int) n));
        number(RecordingFields.SEGMENT.key().path()).ifPresent(n -> hints.segment((int) n));
    }

    private void scales() {
        test.part("scale").values().forEach((channel, v) -> {
            Matcher m = SCALE.matcher(((Value.Words) v).text());
            if (m.matches()
                    && QuantityText.parse(m.group(1)) instanceof Stated worth
                    && worth.nominal().si() != 0) {
                double zero =
                        m.group(2) == null ? 0 : Double.parseDouble(m.group(2).replace(',', '.'));
                boolean bare = worth.dimension().equals(Dimension.NUMBER);
                Optional<Unit> unit = bare ? Optional.empty() : Optional.of(worth.unit());
                hints.scale(
                        channel,
                        new ReadingHints.Scale(
                                worth.unit().fromSi(worth.nominal().si()), zero, unit));
            } else {
                cannot(v, "is no worth of one count", "Write it like 20 mV, or 20 mV zero at 128.");
            }
        });
    }

    private OptionalDouble number(String key) {
        return test.figure(key).map(d -> OptionalDouble.of(d.si())).orElse(OptionalDouble.empty());
    }

    private void cannot(Value value, String statement, String remedy) {
        String text = ((Value.Words) value).text();
        problems.add(
                Problem.Kind.NOT_A_QUANTITY, value.place(), text, Problems.quoted(text) + " " + statement, "", remedy);
    }
}
