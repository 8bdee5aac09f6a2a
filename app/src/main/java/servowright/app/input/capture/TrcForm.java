package servowright.app.input.capture;

import java.util.List;
import servowright.engine.capture.Frame;

/**
 * The table form of files that end in .trc: lines of number, milliseconds and further columns, whose order the head states or
 * follows from the version of the form. Identifiers of four digits have 11 bits, of eight 29.
 */
final class TrcForm implements LineForm {
    private static final List<String> FIRST = List.of("N", "O", "I", "L", "D");
    private static final List<String> ONE = List.of("N", "O", "d", "I", "L", "D");
    private static final List<String> ONE_WITH_BUS = List.of("N", "O", "B", "d", "I", "R", "L", "D");

    private final BusNames names;
    private List<String> columns = FIRST;
    private boolean started;
    private String reason = "";

    TrcForm(BusNames names) {
        this.names = names;
    }

    @Override
    public String words() {
        return "table lines of a .trc file";
    }

    @Override
    public String reason() {
        return reason;
    }

    @Override
    public Outcome read(byte[] b, int from, int to, Frame frame) {
        Words words = Words.of(b, from, to);
        String first = words.peek();
        if (first.startsWith(";$FILEVERSION=")) {
            started = true;
            String version = first.substring(first.indexOf('=') + 1);
            columns = version.equals("1.1") ? ONE : version.startsWith("1.0") ? FIRST : ONE_WITH_BUS;
        } else if (first.startsWith(";$COLUMNS=")) {
            columns = List.of(first.substring(first.indexOf('=') + 1).split(","));
        }
        if (first.isEmpty() || first.startsWith(";") || !started) {
            return Outcome.NOTHING;
        }
        return row(words, frame.start(Frame.NO_TIME, 0, 0, 0));
    }

    private Outcome row(Words words, Frame frame) {
        String kind = "DT";
        String direction = "Rx";
        String id = "";
        int length = -1;
        int bus = 0;
        long timeNs = -1;
        for (String column : columns) {
            switch (column) {
                case "O" -> timeNs = Words.nanoseconds(words.next(), 1_000_000);
                case "T" -> kind = words.next();
                case "d" -> direction = words.next();
                case "B" -> bus = names.number(words.next());
                case "I" -> id = words.next();
                case "L", "l" -> length = Words.number(words.next(), 10);
                case "D" -> {}
                default -> words.next();
            }
        }
        if (timeNs < 0) {
            return malformed("the time is broken");
        }
        if (!direction.matches("Rx|Tx") || !kind.matches("DT|FD|FB|FE|BI|RR|ER")) {
            return Outcome.OTHER;
        }
        int value = Words.number(id, 16);
        if (value < 0 || value > (id.length() > 4 ? 0x1fff_ffff : 0x7ff)) {
            return malformed("the identifier is broken");
        }
        int flags = (id.length() > 4 ? Frame.EXTENDED : 0) | (direction.equals("Tx") ? Frame.OWN : 0);
        frame.start(timeNs, bus, value, flags | kindFlags(kind));
        return data(words, frame, length);
    }

    private static int kindFlags(String kind) {
        return switch (kind) {
            case "FD" -> Frame.FD;
            case "FB" -> Frame.FD | Frame.RATE_SWITCH;
            case "FE" -> Frame.FD | Frame.SENDER_PASSIVE;
            case "BI" -> Frame.FD | Frame.RATE_SWITCH | Frame.SENDER_PASSIVE;
            case "RR" -> Frame.REMOTE;
            case "ER" -> Frame.ERROR;
            default -> 0;
        };
    }

    private Outcome data(Words words, Frame frame, int length) {
        int most = frame.is(Frame.FD) ? Frame.MOST_BYTES : 8;
        if (length < 0 || length > most) {
            return malformed("the length is broken");
        }
        if (words.take("RTR") || frame.is(Frame.REMOTE)) {
            frame.marked(Frame.REMOTE).sized(length);
            return Outcome.FRAME;
        }
        if (words.bytes(frame, length, 16) != length) {
            return malformed("bytes are missing");
        }
        frame.sized(length);
        return Outcome.FRAME;
    }

    private Outcome malformed(String why) {
        reason = why;
        return Outcome.MALFORMED;
    }
}
