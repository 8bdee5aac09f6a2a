package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Keys and values that stand before or beside the data of a file. */
record Preamble(List<Entry> entries) {
    private static final Pattern UNIT_IN_KEY = Pattern.compile("[(\\[]\\s*([^)\\]]+?)\\s*[)\\]]");
    private static final Pattern KEY_VALUE = Pattern.compile("([^:=]{1,60}?)\\s*[:=]\\s*(\\S.*)");
    private static final Pattern CHANNEL_VALUE = Pattern.compile("[A-Za-z][A-Za-z0-9 ]{0,15}:\\s*(.+)");

    Preamble {
        entries = List.copyOf(entries);
    }

    /**
     * One key with its values.
     *
     * @param line number in the file, from 1
     * @param key lower case, letters and digits only, without the unit
     * @param unit what stands in brackets in the key, or empty text
     * @param values the cells behind it, without an "Analog:" or "CH1:" before them
     */
    record Entry(int line, String key, String unit, List<String> values) {
        String value() {
            return values.isEmpty() ? "" : values.get(0);
        }
    }

    /** Whether a line is a comment by its first character. */
    static boolean comment(String line) {
        String stripped = line.stripLeading();
        return (stripped.startsWith("#") && !stripped.matches("#\\d+[,;\\t].*"))
                || stripped.startsWith("//")
                || stripped.startsWith("%");
    }

    /** A comment without its mark. */
    static String uncommented(String line) {
        return line.strip().replaceFirst("^(#+|//+|%+)\\s*", "");
    }

    /** The entry of a line's cells, if the first says a key. */
    static Optional<Entry> entry(int line, List<String> cells) {
        if (cells.isEmpty() || cells.get(0).isEmpty()) {
            return Optional.empty();
        }
        List<String> values = new ArrayList<>();
        for (String cell : cells.subList(1, cells.size())) {
            if (!cell.isEmpty()) {
                Matcher named = CHANNEL_VALUE.matcher(cell);
                values.add(named.matches() && !cell.matches(".*\\d:\\d.*") ? named.group(1) : cell);
            }
        }
        Matcher pair = KEY_VALUE.matcher(cells.get(0));
        if (values.isEmpty() && pair.matches()) {
            return Optional.of(entry(line, pair.group(1), List.of(pair.group(2))));
        }
        return values.isEmpty() ? Optional.empty() : Optional.of(entry(line, cells.get(0), values));
    }

    private static Entry entry(int line, String key, List<String> values) {
        Matcher unit = UNIT_IN_KEY.matcher(key);
        String inBrackets = unit.find() ? unit.group(1) : "";
        return new Entry(line, plain(unit.replaceAll(" ")), inBrackets, values);
    }

    /** The entries of a comment line: one, or several separated by semicolons. */
    static List<Entry> comments(int line, String text) {
        List<Entry> entries = new ArrayList<>();
        for (String part : uncommented(text).split(";")) {
            Matcher pair = KEY_VALUE.matcher(part.strip());
            if (pair.matches()) {
                entries.add(entry(line, pair.group(1), List.of(pair.group(2).strip())));
            }
        }
        return entries;
    }

    /** Lower case, letters and digits only. */
    static String plain(String text) {
        return text.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]", "");
    }

    /** The first entry whose key is one of {@code keys}. */
    Optional<Entry> find(List<String> keys) {
        return entries.stream().filter(e -> keys.contains(e.key())).findFirst();
    }
}
