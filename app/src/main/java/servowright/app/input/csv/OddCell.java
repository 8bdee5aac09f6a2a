package servowright.app.input.csv;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import java.time.temporal.ChronoUnit;
import java.util.Locale;

/** Cells that the number loop does not take: times of day, dates, long counts, quoted numbers, words. */
final class OddCell {
    private final char decimal;
    private long base;
    private boolean based;

    OddCell(char decimal) {
        this.decimal = decimal;
    }

    /** The first long count or date, which is taken off all others; in ticks or in nanoseconds since 1970. */
    long base() {
        return base;
    }

    /** The value of {@code cell} as a column of that kind counts it; NaN if it cannot be read so. */
    double value(String cell, ColumnKind kind) {
        String bare = Cells.bare(cell);
        return switch (kind) {
            case NUMBER -> number(bare);
            case LONG_COUNT -> longCount(bare);
            case TIME_OF_DAY -> timeOfDay(bare);
            case CALENDAR -> calendar(bare);
        };
    }

    private double number(String cell) {
        if (cell.length() > 400) {
            return Double.NaN;
        }
        double value = Cells.value(cell, decimal);
        if (!Double.isNaN(value)) {
            return value;
        }
        return switch (cell.toLowerCase(Locale.ROOT)) {
            case "inf", "+inf", "infinity" -> Double.POSITIVE_INFINITY;
            case "-inf", "-infinity" -> Double.NEGATIVE_INFINITY;
            default -> Double.NaN;
        };
    }

    private double longCount(String cell) {
        if (cell.isEmpty() || (cell.length() > 18 && !cell.matches("\\d{19}"))) {
            return Double.NaN;
        }
        try {
            return since(Long.parseLong(cell));
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private double since(long count) {
        if (!based) {
            base = count;
            based = true;
        }
        return count - base;
    }

    private static double timeOfDay(String cell) {
        String[] parts = cell.split(":", -1);
        if (parts.length != 3) {
            return Double.NaN;
        }
        double hours = Cells.value(parts[0], '.');
        double minutes = Cells.value(parts[1], '.');
        double seconds = Cells.value(parts[2].replace(',', '.'), '.');
        return (hours * 60 + minutes) * 60 + seconds;
    }

    private double calendar(String cell) {
        try {
            String iso = cell.replace(' ', 'T').replace(',', '.').replace("Z", "");
            Instant moment = LocalDateTime.parse(iso).toInstant(ZoneOffset.UTC);
            return since(ChronoUnit.NANOS.between(Instant.EPOCH, moment));
        } catch (DateTimeParseException | ArithmeticException e) {
            return Double.NaN;
        }
    }
}
