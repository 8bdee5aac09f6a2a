package servowright.app.input.capture;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeParseException;
import servowright.engine.capture.Frame;

/**
 * The form of a console: {@code (time)  interface  TX B E  identifier  [length]  bytes  'text'}, where time, direction, flags
 * and text may be missing. A length of two digits means FD. Bytes may be binary, or in reverse order with a grave accent
 * between them. A date without a zone is read as UTC: only differences matter.
 */
final class ConsoleForm implements LineForm {
    private static final long ERROR_BIT = 0x2000_0000;

    private final BusNames names;
    private String reason = "";

    ConsoleForm(BusNames names) {
        this.names = names;
    }

    @Override
    public String words() {
        return "console lines";
    }

    @Override
    public String reason() {
        return reason;
    }

    @Override
    public Outcome read(byte[] b, int from, int to, Frame frame) {
        if (from == to || b[from] == '#' || b[from] == '\t') {
            return Outcome.NOTHING;
        }
        Words words = Words.of(b, from, to);
        if (words.left() == 0) {
            return Outcome.NOTHING;
        }
        if (words.take("DROPCOUNT:")) {
            words.next();
            reason = Words.number(words.peek(), 10) > 0 ? words.peek() : "1";
            return Outcome.LOST;
        }
        long timeNs = time(words);
        if (timeNs == -1) {
            return malformed("the time stamp is broken");
        }
        int bus = names.number(words.next());
        int flags = flags(words);
        String id = words.next();
        long value = id.length() == 3 || id.length() == 8 ? Words.number(id, 16) : -1;
        if (value < 0) {
            return id.length() == 5 ? Outcome.XL : malformed("there is no identifier");
        }
        boolean error = id.length() == 8 && (value & ERROR_BIT) != 0;
        flags |= error ? Frame.ERROR : id.length() == 8 ? Frame.EXTENDED : 0;
        int most = id.length() == 8 ? 0x1fff_ffff : 0x7ff;
        if (!error && value > most) {
            return malformed("the identifier is too large");
        }
        return rest(words, frame.start(timeNs, bus, (int) (error ? value & (ERROR_BIT - 1) : value), flags));
    }

    private static long time(Words words) {
        if (!words.peek().startsWith("(")) {
            return Frame.NO_TIME;
        }
        String first = words.next().substring(1);
        if (first.endsWith(")")) {
            return Words.nanoseconds(first.substring(0, first.length() - 1), 1_000_000_000);
        }
        String second = words.next();
        if (!second.endsWith(")")) {
            return -1;
        }
        try {
            LocalDateTime date = LocalDateTime.parse(first + "T" + second.substring(0, second.length() - 1));
            Instant moment = date.toInstant(ZoneOffset.UTC);
            long seconds = moment.getEpochSecond();
            return seconds < 0 || seconds > 9_000_000_000L ? -1 : seconds * 1_000_000_000 + moment.getNano();
        } catch (DateTimeParseException e) {
            return -1;
        }
    }

    private static int flags(Words words) {
        int flags = 0;
        if (words.take("TX")) {
            flags |= Frame.OWN;
        } else {
            words.take("RX");
        }
        for (int k = 0; k < 2; k++) {
            if (words.take("B")) {
                flags |= Frame.RATE_SWITCH;
            } else if (words.take("E")) {
                flags |= Frame.SENDER_PASSIVE;
            } else {
                words.take("-");
            }
        }
        return flags;
    }

    private Outcome rest(Words words, Frame frame) {
        String shown = words.next();
        String digits = shown.replaceAll("^\\[+|\\]+$", "");
        int length = shown.startsWith("[") && shown.endsWith("]") ? Words.number(digits, 10) : -1;
        if (length < 0 || length > Frame.MOST_BYTES) {
            return malformed("there is no length in brackets");
        }
        if (digits.length() == 2) {
            frame.marked(Frame.FD);
        } else if (length > 8) {
            return malformed("a classical frame has more than 8 bytes");
        }
        if (words.take("remote")) {
            frame.marked(Frame.REMOTE).sized(length);
            return Outcome.FRAME;
        }
        int read = words.peek().indexOf('`') > 0 ? reversed(words.next(), frame) : bytes(words, frame, length);
        if (read != length) {
            return malformed(read + " bytes are there, " + length + " are stated");
        }
        frame.sized(length);
        return Outcome.FRAME;
    }

    private static int bytes(Words words, Frame frame, int length) {
        return words.bytes(frame, length, words.peek().length() == 8 ? 2 : 16);
    }

    private static int reversed(String word, Frame frame) {
        String[] parts = word.split("`");
        for (int k = 0; k < parts.length && k < Frame.MOST_BYTES; k++) {
            int value = Words.number(parts[parts.length - 1 - k], parts[k].length() == 8 ? 2 : 16);
            if (value < 0 || value > 255) {
                return -1;
            }
            frame.data()[k] = (byte) value;
        }
        return parts.length;
    }

    private Outcome malformed(String why) {
        reason = why;
        return Outcome.MALFORMED;
    }
}
