package servowright.app.input.csv;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Cells as text: splitting a line, and telling what kind of thing a cell is. Used on the head of a file only. */
final class Cells {
    /** A time of day before an arrow, at the start of a line. */
    static final Pattern CLOCK_PREFIX = Pattern.compile("\\s*(\\d{1,2}:\\d{2}:\\d{2}(?:[.,]\\d{1,9})?)\\s*->\\s*");

    private static final Pattern TIME_OF_DAY = Pattern.compile("\\d{1,2}:\\d{2}:\\d{2}(?:[.,]\\d{1,9})?");
    private static final Pattern CALENDAR =
            Pattern.compile("\\d{4}-\\d{2}-\\d{2}[ T]\\d{2}:\\d{2}:\\d{2}(?:[.,]\\d{1,9})?Z?");
    private static final Set<String> NO_NUMBERS =
            Set.of("nan", "-nan", "inf", "-inf", "+inf", "infinity", "-infinity", "-nan(ind)", "#n/a", "n/a", "null");

    private Cells() {}

    /** What a cell holds. */
    enum Kind {
        BLANK,
        NUMBER,
        /** A whole number of 16 digits or more: a count of clock ticks that a double cannot hold. */
        LONG_COUNT,
        TIME_OF_DAY,
        CALENDAR,
        /** A word that stands in the place of a number. */
        NO_NUMBER,
        TEXT;

        boolean data() {
            return this != BLANK && this != TEXT;
        }
    }

    /** The cells of a line, without the blanks and quotes around them. */
    static List<String> split(String line, Dialect dialect) {
        List<String> cells = new ArrayList<>();
        String rest = line;
        if (dialect.clockPrefix()) {
            Matcher prefix = CLOCK_PREFIX.matcher(line);
            boolean found = prefix.lookingAt();
            cells.add(found ? prefix.group(1) : "");
            rest = found ? line.substring(prefix.end()) : line;
        }
        if (dialect.blanks()) {
            String stripped = rest.strip();
            if (!stripped.isEmpty()) {
                cells.addAll(List.of(stripped.split("[ \\t]+")));
            }
            return cells;
        }
        splitQuoted(rest, dialect.delimiter(), cells);
        return cells;
    }

    private static void splitQuoted(String line, char delimiter, List<String> cells) {
        boolean quoted = false;
        int start = 0;
        for (int i = 0; i <= line.length(); i++) {
            char c = i < line.length() ? line.charAt(i) : delimiter;
            if (c == '"' && i < line.length()) {
                quoted = !quoted;
            } else if (i == line.length() || (c == delimiter && !quoted)) {
                cells.add(bare(line.substring(start, i)));
                start = i + 1;
            }
        }
    }

    /** A cell without the blanks and the pair of quotes around it. */
    static String bare(String cell) {
        String stripped = cell.strip();
        boolean quoted = stripped.length() >= 2 && stripped.startsWith("\"") && stripped.endsWith("\"");
        return quoted
                ? stripped.substring(1, stripped.length() - 1)
                        .replace("\"\"", "\"")
                        .strip()
                : stripped;
    }

    /** What {@code cell} holds. */
    static Kind kind(String cell, char decimal) {
        if (cell.isEmpty()) {
            return Kind.BLANK;
        }
        if (cell.length() > 40) {
            return Kind.TEXT;
        }
        if (number(cell, decimal)) {
            int digits = digits(cell, 0);
            return digits == cell.length() && digits >= 16 && digits <= 19 ? Kind.LONG_COUNT : Kind.NUMBER;
        }
        if (cell.indexOf(':') > 0) {
            if (TIME_OF_DAY.matcher(cell).matches()) {
                return Kind.TIME_OF_DAY;
            }
            if (CALENDAR.matcher(cell).matches()) {
                return Kind.CALENDAR;
            }
        }
        return NO_NUMBERS.contains(cell.toLowerCase(Locale.ROOT)) ? Kind.NO_NUMBER : Kind.TEXT;
    }

    /** A decimal number: sign, digits with at most one mark, exponent. A decimal comma needs digits behind it. */
    private static boolean number(String cell, char decimal) {
        int n = cell.length();
        int at = n > 0 && "+-\u2212".indexOf(cell.charAt(0)) >= 0 ? 1 : 0;
        int whole = digits(cell, at);
        int fraction = 0;
        at += whole;
        if (at < n && cell.charAt(at) == decimal) {
            fraction = digits(cell, at + 1);
            if (decimal == ',' && fraction == 0) {
                return false;
            }
            at += 1 + fraction;
        }
        if (whole + fraction > 0 && at < n && (cell.charAt(at) | 0x20) == 'e') {
            at++;
            at += at < n && (cell.charAt(at) == '-' || cell.charAt(at) == '+') ? 1 : 0;
            int exponent = digits(cell, at);
            at += exponent > 0 && exponent <= 4 ? exponent : n;
        }
        return whole + fraction > 0 && at == n;
    }

    private static int digits(String cell, int from) {
        int at = from;
        while (at < cell.length() && cell.charAt(at) >= '0' && cell.charAt(at) <= '9') {
            at++;
        }
        return at - from;
    }

    /** The number in {@code cell}; NaN if it holds none. */
    static double value(String cell, char decimal) {
        return number(cell, decimal)
                ? Double.parseDouble(cell.replace('\u2212', '-').replace(decimal, '.'))
                : Double.NaN;
    }

    /** The value of the last digit of a number as printed, 0 if it is none. */
    static double resolution(String cell, char decimal) {
        if (!number(cell, decimal)) {
            return 0;
        }
        String lower = cell.toLowerCase(Locale.ROOT);
        int e = lower.indexOf('e');
        String mantissa = e < 0 ? lower : lower.substring(0, e);
        int exponent = e < 0 ? 0 : Integer.parseInt(lower.substring(e + 1).replace("+", ""));
        int mark = mantissa.indexOf(decimal);
        return Math.pow(10, exponent - (mark < 0 ? 0 : mantissa.length() - mark - 1));
    }
}
