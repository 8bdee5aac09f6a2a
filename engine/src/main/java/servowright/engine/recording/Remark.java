package servowright.engine.recording;

import java.util.Optional;

/**
 * Something that was concluded or found while a file became a recording. A recording carries all of them, so that no
 * repair is silent.
 *
 * @param kind what sort of thing
 * @param where the channel it concerns, "clock" or "file"
 * @param text what was found, in a sentence without a full stop
 * @param count how often, 0 when counting makes no sense
 * @param firstRow the first row concerned, counted from 1; 0 when no row is concerned
 * @param handled what was done about it; empty when the data were left as they are
 */
public record Remark(Kind kind, String where, String text, long count, long firstRow, Optional<String> handled) {

    /** The sorts of remark. */
    public enum Kind {
        LAYOUT,
        UNIT_NOT_STATED,
        BAD_CHARACTER,
        CLOCK_ROUNDED,
        CLOCK_REPEATS,
        CLOCK_BACKWARD,
        COUNTER_WRAPPED,
        INTERVAL_DISAGREES,
        LENGTH_DISAGREES,
        GAP,
        SEGMENTS,
        DROP_OUT,
        SATURATED,
        PEAK_PAIRS,
        NOT_A_NUMBER,
        SHORT_ROW,
        HALF_LAST_LINE,
        LINE_SKIPPED,
        COLUMN_LEFT_OUT,
        THINNED
    }

    /** A conclusion that concerns no particular row. */
    public static Remark concluded(Kind kind, String where, String text) {
        return new Remark(kind, where, text, 0, 0, Optional.empty());
    }

    /** A defect that was seen {@code count} times, at first in {@code firstRow} (counted from 1). */
    public static Remark found(Kind kind, String where, String text, long count, long firstRow) {
        return new Remark(kind, where, text, count, firstRow, Optional.empty());
    }

    /** The same remark, together with what was done about it. */
    public Remark handledBy(String what) {
        return new Remark(kind, where, text, count, firstRow, Optional.of(what));
    }
}
