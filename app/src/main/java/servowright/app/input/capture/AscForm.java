package servowright.app.input.capture;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Locale;
import servowright.engine.bus.FdFrame;
import servowright.engine.capture.Frame;

/**
 * The table form of files that end in .asc: {@code seconds channel identifier Rx d length bytes}, a line with CANFD for FD,
 * identifiers with an x behind them of 29 bits. The head says whether numbers are hexadecimal and stamps are differences.
 */
final class AscForm implements LineForm {
    private final BusNames names;
    private int base = 16;
    private boolean differences;
    private long lastNs;
    private String reason = "";

    AscForm(BusNames names) {
        this.names = names;
    }

    @Override
    public String words() {
        return "table lines of an .asc file";
    }

    @Override
    public String reason() {
        return reason;
    }

    @Override
    public Outcome read(byte[] b, int from, int to, Frame frame) {
        Words words = Words.of(b, from, to);
        String first = words.next();
        if (first.equals("base")) {
            base = words.next().equals("dec") ? 10 : 16;
            String text = new String(b, from, to - from, StandardCharsets.ISO_8859_1);
            differences = text.toLowerCase(Locale.ROOT).contains("timestamps relative");
            return Outcome.NOTHING;
        }
        long timeNs = first.indexOf('.') > 0 ? Words.nanoseconds(first, 1_000_000_000) : -1;
        if (timeNs < 0 || words.left() == 0) {
            return Outcome.NOTHING;
        }
        lastNs = differences ? lastNs + timeNs : timeNs;
        if (words.take("CANFD")) {
            return fd(words, frame);
        }
        String channel = words.next();
        if (Words.number(channel, 10) < 0) {
            return Outcome.OTHER;
        }
        frame.start(lastNs, names.number(channel), 0, 0);
        if (words.peek().startsWith("ErrorFrame")) {
            return error(frame);
        }
        return classical(words, frame);
    }

    private Outcome classical(Words words, Frame frame) {
        String id = words.next();
        boolean own = words.peek().equals("Tx");
        if (!own && !words.peek().equals("Rx")) {
            return Outcome.OTHER;
        }
        words.next();
        if (!identify(id, frame, own)) {
            return malformed("the identifier is broken");
        }
        if (words.take("r")) {
            int length = words.peek().length() == 1 ? Words.number(words.peek(), 16) : 0;
            frame.marked(Frame.REMOTE).sized(Math.max(0, Math.min(8, length)), Math.max(0, length));
            return Outcome.FRAME;
        }
        int code = words.take("d") ? Words.number(words.next(), 16) : -1;
        if (code < 0 || code > 15) {
            return malformed("the length is broken");
        }
        int length = Math.min(8, code);
        if (words.bytes(frame, length, base) != length) {
            return malformed("bytes are missing");
        }
        frame.sized(length, code);
        return Outcome.FRAME;
    }

    private boolean identify(String id, Frame frame, boolean own) {
        boolean extended = id.endsWith("x") || id.endsWith("X");
        int value = Words.number(extended ? id.substring(0, id.length() - 1) : id, base);
        if (value < 0 || value > (extended ? 0x1fff_ffff : 0x7ff)) {
            return false;
        }
        int flags = (extended ? Frame.EXTENDED : 0) | (own ? Frame.OWN : 0);
        frame.start(frame.timeNs(), frame.bus(), value, flags);
        return true;
    }

    private Outcome fd(Words words, Frame frame) {
        frame.start(lastNs, names.number(words.next()), 0, 0);
        boolean own = words.next().equals("Tx");
        if (words.peek().startsWith("ErrorFrame")) {
            return error(frame);
        }
        if (!identify(words.next(), frame, own)) {
            return malformed("the identifier is broken");
        }
        if (!words.peek().matches("[01]") || !words.peek(1).matches("[01]")) {
            words.next(); // the name of the message
        }
        frame.marked(Frame.FD);
        frame.marked(words.next().equals("1") ? Frame.RATE_SWITCH : 0);
        frame.marked(words.next().equals("1") ? Frame.SENDER_PASSIVE : 0);
        int code = Words.number(words.next(), 16);
        int length = Words.number(words.next(), 10);
        if (code < 0 || code > 15 || length < 0 || length > FdFrame.bytesOf(code)) {
            return malformed("the length is broken");
        }
        if (words.bytes(frame, length, base) != length) {
            return malformed("bytes are missing");
        }
        frame.sized(length, code);
        return Outcome.FRAME;
    }

    /** The table names no class that could be kept. */
    private static Outcome error(Frame frame) {
        Arrays.fill(frame.data(), 0, 8, (byte) 0);
        frame.marked(Frame.ERROR).sized(8);
        return Outcome.FRAME;
    }

    private Outcome malformed(String why) {
        reason = why;
        return Outcome.MALFORMED;
    }
}
