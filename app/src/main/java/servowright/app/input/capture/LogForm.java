package servowright.app.input.capture;

import java.nio.charset.StandardCharsets;
import servowright.engine.bus.FdFrame;
import servowright.engine.capture.Frame;

/**
 * The log form: {@code (seconds) interface identifier#data}, where three digits are an 11-bit identifier, eight a 29-bit one or
 * with bit 29 set an error report, five CAN XL; {@code ##} and a digit of flags mark FD, {@code R} a remote frame, {@code _} a
 * length code above 8.
 */
final class LogForm implements LineForm {
    /** More does not fit into nanoseconds of 64 bits. */
    private static final long MOST_SECONDS = 9_000_000_000L;

    private static final int ERROR_BIT = 0x2000_0000;
    private static final int FD_RATE_SWITCH = 1;
    private static final int FD_PASSIVE = 2;

    private final BusNames names;
    private String reason = "";
    private int close;

    LogForm(BusNames names) {
        this.names = names;
    }

    @Override
    public String words() {
        return "log lines";
    }

    @Override
    public String reason() {
        return reason;
    }

    @Override
    public Outcome read(byte[] b, int from, int to, Frame frame) {
        if (from == to || b[from] == '#') {
            return Outcome.NOTHING;
        }
        if (b[from] != '(') {
            return withoutStamp(b, from, to);
        }
        long timeNs = stamp(b, from + 1, to);
        if (timeNs < 0 || close + 1 >= to) {
            return malformed("the time stamp is broken");
        }
        int name = blanksBehind(b, close + 1, to);
        int nameEnd = wordEnd(b, name, to);
        int id = blanksBehind(b, nameEnd, to);
        int hash = id;
        int value = 0;
        for (int digit; hash < to && (digit = Digits.nibble(b[hash])) >= 0 && hash - id < 9; hash++) {
            value = value << 4 | digit;
        }
        if (hash >= to || b[hash] != '#' || nameEnd == name) {
            return malformed("the identifier is broken");
        }
        return frame(b, hash, to, frame.start(timeNs, names.number(b, name, nameEnd), value, 0), hash - id);
    }

    /** The time from {@code from} to the bracket, which {@link #close} is set to; -1 when it is none. */
    private long stamp(byte[] b, int from, int to) {
        int at = from;
        long seconds = 0;
        for (; at < to && Digits.decimal(b[at]); at++) {
            seconds = seconds * 10 + b[at] - '0';
        }
        boolean usual = at + 7 < to && at > from && at <= from + 10 && seconds < MOST_SECONDS;
        if (usual && b[at] == '.' && b[at + 7] == ')') {
            long timeNs = microseconds(b, at + 1, seconds);
            if (timeNs >= 0) {
                close = at + 7;
                return timeNs;
            }
        }
        while (at < to && b[at] != ')') {
            at++;
        }
        close = at;
        return Digits.nanoseconds(b, from, at, 1_000_000_000);
    }

    /** Six digits behind whole seconds, the usual case; -1 when they are none. */
    private static long microseconds(byte[] b, int from, long seconds) {
        int us = 0;
        int wrong = 0;
        for (int i = from; i < from + 6; i++) {
            int digit = b[i] - '0';
            wrong |= digit | (9 - digit);
            us = us * 10 + digit;
        }
        return wrong < 0 ? -1 : seconds * 1_000_000_000 + us * 1000L;
    }

    private Outcome withoutStamp(byte[] b, int from, int to) {
        String text = new String(b, from, Math.min(to - from, 200), StandardCharsets.ISO_8859_1).strip();
        if (text.startsWith("DROPCOUNT:")) {
            String digits = text.replaceFirst("^DROPCOUNT: dropped (\\d{1,9}) .*$", "$1");
            reason = Digits.decimal((byte) digits.charAt(0)) ? digits : "1";
            return Outcome.LOST;
        }
        return text.isEmpty() ? Outcome.NOTHING : malformed("there is no time stamp");
    }

    private Outcome frame(byte[] b, int hash, int to, Frame frame, int digits) {
        int id = frame.identifier();
        int flags = 0;
        if (digits == 5) {
            return Outcome.XL;
        }
        if (digits == 8 && (id & ERROR_BIT) != 0) {
            id &= ERROR_BIT - 1;
            flags = Frame.ERROR;
        } else if (digits == 8) {
            flags = Frame.EXTENDED;
        } else if (digits != 3) {
            return malformed("an identifier has 3 or 8 digits");
        }
        if (id < 0 || id > 0x1fff_ffff || (digits == 3 && id > 0x7ff)) {
            return malformed("the identifier is too large");
        }
        frame.start(frame.timeNs(), frame.bus(), id, flags);
        int at = hash + 1;
        byte first = at < to ? b[at] : 0;
        if (first == '#') {
            return fd(b, at + 1, to, frame);
        }
        return first == 'R' || first == 'r' ? remote(b, at + 1, to, frame) : data(b, at, to, frame);
    }

    private Outcome fd(byte[] b, int from, int to, Frame frame) {
        int nibble = from < to ? Digits.nibble(b[from]) : -1;
        if (nibble < 0) {
            return malformed("the FD flags are missing");
        }
        frame.marked(Frame.FD);
        frame.marked((nibble & FD_RATE_SWITCH) != 0 ? Frame.RATE_SWITCH : 0);
        frame.marked((nibble & FD_PASSIVE) != 0 ? Frame.SENDER_PASSIVE : 0);
        int end = bytes(b, from + 1, to, frame, Frame.MOST_BYTES);
        if (end < 0) {
            return malformed(reason);
        }
        frame.sized(frame.length());
        if (FdFrame.bytesOf(frame.code()) != frame.length()) {
            return malformed(frame.length() + " bytes are no length of FD");
        }
        return tail(b, end, to, frame);
    }

    private Outcome remote(byte[] b, int from, int to, Frame frame) {
        int at = from;
        int length = at < to && b[at] >= '0' && b[at] <= '8' ? b[at++] - '0' : 0;
        frame.marked(Frame.REMOTE).sized(length);
        return tail(b, rawCode(b, at, to, frame), to, frame);
    }

    private Outcome data(byte[] b, int from, int to, Frame frame) {
        int end = bytes(b, from, to, frame, 8);
        return end < 0 ? malformed(reason) : tail(b, rawCode(b, end, to, frame), to, frame);
    }

    /** Pairs of digits, with points between them allowed; returns the index behind, or -1. */
    private int bytes(byte[] b, int from, int to, Frame frame, int most) {
        byte[] data = frame.data();
        int at = from;
        int n = 0;
        for (int pair; n < most && at + 1 < to && (pair = Digits.pair(b, at)) >= 0; at += 2) {
            data[n++] = (byte) pair;
        }
        while (at < to) {
            int high = Digits.nibble(b[at]);
            if (high < 0 && b[at] == '.' && n > 0) {
                at++;
                continue;
            }
            if (high < 0) {
                break;
            }
            int low = at + 1 < to ? Digits.nibble(b[at + 1]) : -1;
            if (low < 0 || n == most) {
                reason = low < 0 ? "the number of digits is odd" : "it has more than " + most + " bytes";
                return -1;
            }
            data[n++] = (byte) (high << 4 | low);
            at += 2;
        }
        frame.sized(n, n);
        return at;
    }

    private static int rawCode(byte[] b, int from, int to, Frame frame) {
        int code = from + 1 < to && b[from] == '_' && frame.length() == 8 ? Digits.nibble(b[from + 1]) : -1;
        if (code < 9) {
            return from;
        }
        frame.sized(8, code);
        return from + 2;
    }

    private Outcome tail(byte[] b, int from, int to, Frame frame) {
        int at = blanksBehind(b, from, to);
        if (at == to) {
            return Outcome.FRAME;
        }
        boolean direction = at > from && (b[at] == 'T' || b[at] == 'R') && blanksBehind(b, at + 1, to) == to;
        if (!direction) {
            return malformed("something stands behind the data");
        }
        if (b[at] == 'T') {
            frame.marked(Frame.OWN);
        }
        return Outcome.FRAME;
    }

    private Outcome malformed(String why) {
        reason = why;
        return Outcome.MALFORMED;
    }

    private static int blanksBehind(byte[] b, int from, int to) {
        int i = from;
        while (i < to && (b[i] == ' ' || b[i] == '\t')) {
            i++;
        }
        return i;
    }

    private static int wordEnd(byte[] b, int from, int to) {
        int i = from;
        while (i < to && b[i] != ' ' && b[i] != '\t') {
            i++;
        }
        return i;
    }
}
