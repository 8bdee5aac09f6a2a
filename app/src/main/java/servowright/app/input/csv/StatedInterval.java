package servowright.app.input.csv;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.quantity.Unit;

/** The time between samples as the preamble of a file states it, as an interval or as a rate. */
record StatedInterval(double seconds, boolean unitStated, int line, String words) {
    private static final List<String> INTERVAL = List.of(
            "sampleinterval",
            "samplinginterval",
            "samplingperiod",
            "sampleperiod",
            "samplingtimeinterval",
            "timeinterval",
            "interval",
            "increment",
            "xincrement",
            "timeincrement",
            "timestep",
            "sampletime",
            "samplingtime",
            "deltat",
            "dt");
    private static final List<String> RATE =
            List.of("samplerate", "samplingrate", "samplingfrequency", "samplefrequency", "sampling", "sps");
    private static final Pattern NUMBER_UNIT = Pattern.compile("([+-]?[\\d.]+(?:[eE][+-]?\\d+)?)\\s*(.*)");
    private static final Pattern RATE_UNIT = Pattern.compile("([kMG]?)(?:Hz|Sa/s|S/s|sps|SPS|Samples/s|samples/s)");

    /** The statement of a preamble, if it makes one that can be read. */
    static Optional<StatedInterval> find(Preamble preamble) {
        return preamble.find(INTERVAL)
                .flatMap(StatedInterval::interval)
                .or(() -> preamble.find(RATE).flatMap(StatedInterval::rate));
    }

    private static Optional<StatedInterval> interval(Preamble.Entry entry) {
        Matcher m = NUMBER_UNIT.matcher(entry.value());
        if (!m.matches()) {
            return Optional.empty();
        }
        double number = Cells.value(m.group(1), '.');
        String word = m.group(2).isEmpty() ? entry.unit() : m.group(2);
        Optional<Unit> unit = UnitWords.find(word).filter(UnitWords::time);
        double seconds = unit.map(u -> u.toSi(number)).orElse(number);
        return of(entry, seconds, unit.isPresent(), entry.value() + (unit.isPresent() ? " " + entry.unit() : ""));
    }

    private static Optional<StatedInterval> rate(Preamble.Entry entry) {
        Matcher m = NUMBER_UNIT.matcher(entry.value());
        if (!m.matches()) {
            return Optional.empty();
        }
        Matcher unit = RATE_UNIT.matcher(m.group(2).isEmpty() ? entry.unit() : m.group(2));
        boolean stated = unit.matches();
        double factor = stated ? factor(unit.group(1)) : 1;
        return of(entry, 1 / (Cells.value(m.group(1), '.') * factor), stated, entry.value());
    }

    private static double factor(String prefix) {
        return switch (prefix) {
            case "k" -> 1e3;
            case "M" -> 1e6;
            case "G" -> 1e9;
            default -> 1;
        };
    }

    private static Optional<StatedInterval> of(Preamble.Entry entry, double seconds, boolean stated, String words) {
        boolean usable = seconds > 0 && Double.isFinite(seconds);
        return usable
                ? Optional.of(new StatedInterval(seconds, stated, entry.line(), words.strip()))
                : Optional.empty();
    }

    /** The time of the first sample, if the preamble states it in seconds. */
    static OptionalDouble start(Preamble preamble) {
        double start = preamble.find(List.of("start", "starttime", "t0", "tstart", "xorigin"))
                .map(e -> Cells.value(e.value(), '.'))
                .orElse(Double.NaN);
        return Double.isNaN(start) ? OptionalDouble.empty() : OptionalDouble.of(start);
    }
}
