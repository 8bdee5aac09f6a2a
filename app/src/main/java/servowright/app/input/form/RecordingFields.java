package servowright.app.input.form;

import java.util.List;
import java.util.stream.Stream;
import servowright.engine.machine.Key;
import servowright.engine.quantity.Quantity;

/** What a test can say about its recording because the file does not say it. */
public enum RecordingFields implements Key.Named {
    FROM(Key.figure("from", "first time to take, on the clock of the recording", hours(-1000), hours(1000), "0.2 s")),
    TO(Key.figure("to", "last time to take", hours(-1000), hours(1000), "1.4 s")),
    EVERY(Key.count("every", "rows to gather into one mean", 1, 1_000_000, "10")),
    SEGMENT(Key.count("segment", "which of several segments to take, from 1", 1, 100_000, "1"));

    /** Says that the rows of a recording have no time: {@code sample_interval: none}. */
    public static final String NO_CLOCK = "none";

    /** Words for the marks between cells. */
    public static final List<String> DELIMITERS = List.of("comma", "semicolon", "tab", "blank");

    /** Words for the mark inside a number. */
    public static final List<String> DECIMALS = List.of("point", "comma");

    private final Key key;

    RecordingFields(Key key) {
        this.key = key;
    }

    @Override
    public Key key() {
        return key;
    }

    private static Quantity hours(double number) {
        return Quantity.of(number, "h");
    }

    static List<Field> all() {
        Key wrap = Key.count(
                "counter_wraps_at", "how many values a counter has before it begins anew", 2, 2_000_000_000, "65536");
        List<Field> words = List.of(
                Field.of(
                        "time_column",
                        "number or name of the column that holds the time, with its unit",
                        "1 [ms]",
                        Shape.Words.like(".+\\[.+\\]", "1 [ms]")),
                Field.of("delimiter", "mark between cells", "semicolon", new Shape.Choice(DELIMITERS)),
                Field.of("decimal", "mark inside a number", "comma", new Shape.Choice(DECIMALS)),
                Field.of(
                        "drop_outs",
                        "what to do with single samples that fall out",
                        "repair",
                        new Shape.Choice(List.of("keep", "repair"))),
                Field.group(
                        "counter_wraps_at",
                        "how many values each counter has, by channel; time is the clock itself",
                        new Shape.Named("channel", "channels", new Shape.Figure(wrap, List.of()))),
                Field.group(
                        "scale",
                        "what one count is worth, by channel",
                        new Shape.Named(
                                "channel", "channels", Shape.Words.like(".*\\d.*", "20 mV, or 20 mV zero at 128"))));
        return Stream.concat(Forms.figures(values()).stream(), words.stream()).toList();
    }
}
