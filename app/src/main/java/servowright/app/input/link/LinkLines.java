package servowright.app.input.link;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import servowright.engine.bus.BitTiming;
import servowright.engine.capture.LinkReport;

/** The lines of one interface, word by word. */
final class LinkLines {
    private static final Pattern STATE = Pattern.compile("can (?:<([^>]*)> )?state (\\S+)(.*)");
    private static final Pattern COUNTERS = Pattern.compile(".*\\(berr-counter tx (\\d{1,9}) rx (\\d{1,9})\\).*");
    private static final Pattern RESTART = Pattern.compile(".*restart-ms (\\d{1,9}).*");
    private static final Pattern TABLE = Pattern.compile("(RX|TX): +(.*)");
    private static final Pattern WORDS = Pattern.compile("\\s+");
    private static final String CAN_TABLE = "re-started bus-errors";
    private static final double LARGEST_RATE = 1e8;
    private static final double LARGEST = 1e9;

    private final String name;
    private final int number;
    private final Map<String, Double> figures = new LinkedHashMap<>();
    private final Map<String, Long> counted = new LinkedHashMap<>();
    private final Map<String, Long> counters = new LinkedHashMap<>();
    private String kind = "";
    private String state = "";
    private String modes = "";
    private Optional<Long> restartMs = Optional.empty();
    private List<String> columns = List.of();
    private String side = "";

    LinkLines(String name, int number) {
        this.name = name;
        this.number = number;
    }

    String name() {
        return name;
    }

    /** Line of its heading. */
    int number() {
        return number;
    }

    void kind(String words) {
        kind = words;
    }

    boolean can() {
        return kind.equals("can");
    }

    /** Takes a line; says what is wrong with it, if anything. */
    Optional<String> line(String line) {
        if (!columns.isEmpty()) {
            return counts(line);
        }
        Matcher table = TABLE.matcher(line);
        if (table.matches()) {
            columns = List.of(WORDS.split(table.group(2)));
            side = table.group(1) + " ";
        } else if (line.startsWith(CAN_TABLE)) {
            columns = List.of(WORDS.split(line));
            side = "";
        } else if (line.startsWith("can ")) {
            state(line);
        } else if (line.matches("(d?bitrate|d?tq|clock) .*")) {
            return pairs(line);
        }
        return Optional.empty();
    }

    private void state(String line) {
        Matcher all = STATE.matcher(line);
        if (!all.matches()) {
            return;
        }
        modes = all.group(1) == null ? "" : all.group(1);
        state = all.group(2);
        Matcher errors = COUNTERS.matcher(line);
        if (errors.matches()) {
            counters.put("tx", Long.parseLong(errors.group(1)));
            counters.put("rx", Long.parseLong(errors.group(2)));
        }
        Matcher restart = RESTART.matcher(line);
        restartMs = restart.matches() ? Optional.of(Long.parseLong(restart.group(1))) : Optional.empty();
    }

    /** The numbers under the headings of a table; further words behind them are of other things. */
    private Optional<String> counts(String line) {
        List<String> words = List.of(WORDS.split(line));
        List<String> heads = columns;
        columns = List.of();
        for (int k = 0; k < heads.size(); k++) {
            if (k >= words.size() || !words.get(k).matches("\\d{1,18}")) {
                return Optional.of("there is no number for " + side + heads.get(k));
            }
            counted.put(
                    side + (heads.get(k).equals("missed") ? "overrun" : heads.get(k)), Long.parseLong(words.get(k)));
        }
        return Optional.empty();
    }

    private Optional<String> pairs(String line) {
        List<String> words = List.of(WORDS.split(line));
        for (int k = 0; k + 1 < words.size(); k += 2) {
            String key = words.get(k).replace("sample_point", "sample-point");
            String value = words.get(k + 1);
            if (!value.matches("\\d{1,10}(\\.\\d{1,9})?")) {
                return Optional.of("the value of " + key + ", \"" + value + "\", is no number");
            }
            figures.put(key, Double.parseDouble(value));
        }
        return Optional.empty();
    }

    /** What the lines say; nothing without a state. */
    Optional<LinkReport> report() {
        return state.isEmpty()
                ? Optional.empty()
                : Optional.of(new LinkReport(name, state, modes, counters, restartMs, phase(""), phase("d"), counted));
    }

    private Optional<LinkReport.Phase> phase(String of) {
        double rate = figure(of + "bitrate");
        return rate <= 0 || rate > LARGEST_RATE
                ? Optional.empty()
                : Optional.of(new LinkReport.Phase(rate, figure(of + "sample-point"), timing(of)));
    }

    /** A quantum is printed in whole nanoseconds: where the prescaler is not told, the nearest that fits the clock is meant. */
    private Optional<BitTiming> timing(String of) {
        double quantum = figure(of + "tq");
        double clock = figure("clock");
        if (quantum <= 0 || quantum > LARGEST || !figures.containsKey(of + "phase-seg2")) {
            return Optional.empty();
        }
        double told = figure(of + "brp");
        double prescaler = told > 0 ? told : Math.max(1, Math.rint(quantum * clock / 1e9));
        try {
            return Optional.of(new BitTiming(
                    Math.round(clock > 0 ? clock : 1e9 / quantum),
                    clock > 0 ? (int) prescaler : 1,
                    (int) figure(of + "prop-seg"),
                    (int) figure(of + "phase-seg1"),
                    (int) figure(of + "phase-seg2"),
                    (int) Math.max(1, figure(of + "sjw"))));
        } catch (IllegalArgumentException e) {
            return Optional.empty(); // segments that no controller has
        }
    }

    private double figure(String key) {
        return figures.getOrDefault(key, 0.0);
    }
}
