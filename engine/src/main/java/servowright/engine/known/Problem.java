package servowright.engine.known;

import java.util.ArrayList;
import java.util.List;

/**
 * Something in the user's input that cannot be used.
 *
 * @param kind      what sort of mistake
 * @param place     where it stands
 * @param given     what stands there; may be empty
 * @param statement what is wrong with it, a sentence without its full stop: {@code 1.4 m is far outside 0.1 mm to 10 mm}
 * @param allowed   what could stand there; may be empty
 * @param remedy    what to do, with its full stop or question mark
 */
public record Problem(Kind kind, Place place, String given, String statement, String allowed, String remedy) {
    public enum Kind {
        OUT_OF_RANGE,
        WRONG_UNIT,
        NOT_A_QUANTITY,
        CONTRADICTION,
        UNKNOWN_KEY,
        UNKNOWN_NAME,
        NOT_ALLOWED_HERE,
        MISSING,
        MISSING_FILE,
        UNREADABLE
    }

    /** One line for people, without the file's name: {@code line 41, axes / tilt / mount / gap: ... Did you mean 1.4 mm?}. */
    public String text() {
        List<String> where = new ArrayList<>();
        if (place.line() > 0) {
            where.add("line " + place.line());
        }
        if (!place.path().isEmpty()) {
            where.add(place.path());
        }
        String head = where.isEmpty() ? "" : String.join(", ", where) + ": ";
        return head + statement + "." + (remedy.isEmpty() ? "" : " " + remedy);
    }
}
