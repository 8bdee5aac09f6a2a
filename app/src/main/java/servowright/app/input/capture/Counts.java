package servowright.app.input.capture;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import servowright.engine.capture.CaptureSummary;

/** What was counted and noticed while a capture was read. */
final class Counts {
    private static final int MOST_NOTES = 20;

    private final List<String> notes = new ArrayList<>();
    private long frames;
    private long lost;
    private long xl;
    private long others;
    private long malformed;
    private String firstMalformed = "";

    void frame() {
        frames++;
    }

    void lost(long n) {
        lost += n;
    }

    void xl() {
        xl++;
    }

    void other() {
        others++;
    }

    /** A line or record that looks like a frame and is none. */
    void malformed(String place, String reason) {
        if (malformed++ == 0) {
            firstMalformed = place + ": " + reason;
        }
    }

    /** Lines or records that look like frames and are none. */
    long malformed() {
        return malformed;
    }

    void note(String text) {
        if (notes.size() < MOST_NOTES && !notes.contains(text)) {
            notes.add(text);
        }
    }

    long frames() {
        return frames;
    }

    /** The lot, once reading has ended. */
    CaptureSummary summary(String form, List<String> buses) {
        if (malformed > 0) {
            note(plural(malformed, "line or record", "lines or records") + " left out as broken, the first is "
                    + firstMalformed);
        }
        if (xl > 0) {
            note(plural(xl, "CAN XL frame", "CAN XL frames") + " left out: they are counted, not read");
        }
        if (others > 0) {
            note(plural(others, "record", "records") + " of other things than frames left out");
        }
        return new CaptureSummary(form, frames, lost, xl, others, malformed, buses, notes);
    }

    static String plural(long n, String one, String more) {
        return String.format(Locale.ROOT, "%d %s", n, n == 1 ? one : more);
    }
}
