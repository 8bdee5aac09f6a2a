package servowright.app.input.capture;

import servowright.engine.capture.Frame;

/**
 * The record of one frame as Linux hands it out, in network byte order: identifier with three flag bits, length, FD flags, two
 * bytes unused, data. It stands alone (link type 227) or behind a cooked header (113, 276) that names the protocol. Records may be
 * cut to the bytes that count, and some programs write the identifier in the order of their own processor.
 */
final class SocketRecord {
    static final int BARE = 227;
    static final int COOKED = 113;
    static final int COOKED_2 = 276;

    private static final int CLASSICAL = 0x000c;
    private static final int FD = 0x000d;
    private static final int XL = 0x000e;
    private static final int HEAD = 8;
    private static final int CLASSES = 0xfff;

    private boolean swapped;
    private String reason = "";

    String reason() {
        return reason;
    }

    /** Reads identifiers in the other byte order from now on. */
    void swap() {
        swapped = true;
    }

    static boolean known(int linkType) {
        return linkType == BARE || linkType == COOKED || linkType == COOKED_2;
    }

    Outcome read(byte[] b, int from, int to, int linkType, long timeNs, int bus, Frame frame) {
        int head = linkType == COOKED ? 16 : linkType == COOKED_2 ? 20 : 0;
        int protocol = CLASSICAL;
        if (head > 0) {
            if (to - from < head) {
                return malformed("the cooked header is cut off");
            }
            protocol = big16(b, linkType == COOKED ? from + 14 : from);
            if (protocol != CLASSICAL && protocol != FD && protocol != XL) {
                return Outcome.OTHER;
            }
        }
        int at = from + head;
        if (to - at < HEAD) {
            return malformed("it has fewer than 8 bytes");
        }
        if (protocol == XL || (b[at + 4] & 0x80) != 0) {
            return Outcome.XL;
        }
        return fields(b, at, to, protocol == FD, frame.start(timeNs, bus, 0, 0));
    }

    private Outcome fields(byte[] b, int at, int to, boolean fdProtocol, Frame frame) {
        int word = swapped ? Integer.reverseBytes(big32(b, at)) : big32(b, at);
        int length = b[at + 4] & 0xff;
        int fdFlags = b[at + 5] & 0xff;
        boolean fd = fdProtocol || (fdFlags & 4) != 0 || length > 8 || to - at == HEAD + Frame.MOST_BYTES;
        int flags = fd ? Frame.FD : 0;
        flags |= fd && (fdFlags & 1) != 0 ? Frame.RATE_SWITCH : 0;
        flags |= fd && (fdFlags & 2) != 0 ? Frame.SENDER_PASSIVE : 0;
        boolean error = (word & 0x2000_0000) != 0;
        boolean remote = !error && !fd && (word & 0x4000_0000) != 0;
        flags |= error ? Frame.ERROR : word < 0 ? Frame.EXTENDED : 0;
        flags |= remote ? Frame.REMOTE : 0;
        int id = word & 0x1fff_ffff;
        if (!error && word >= 0 && id > 0x7ff) {
            return malformed("an 11-bit identifier has more bits");
        }
        if (length > Frame.MOST_BYTES || (!remote && to - at < HEAD + length)) {
            return malformed("data bytes are missing");
        }
        if (!remote) {
            System.arraycopy(b, at + HEAD, frame.data(), 0, length);
        }
        frame.start(frame.timeNs(), frame.bus(), id, flags).sized(length);
        return Outcome.FRAME;
    }

    /** Whether the identifier of a record cannot be one in network order (or, swapped, in the other). */
    static boolean impossible(byte[] b, int from, int linkType, boolean swap) {
        int at = from + (linkType == COOKED ? 16 : linkType == COOKED_2 ? 20 : 0);
        int word = swap ? Integer.reverseBytes(big32(b, at)) : big32(b, at);
        boolean extended = word < 0;
        boolean remote = (word & 0x4000_0000) != 0;
        boolean error = (word & 0x2000_0000) != 0;
        int id = word & 0x1fff_ffff;
        return error ? remote || id > CLASSES : !extended && id > 0x7ff;
    }

    private Outcome malformed(String why) {
        reason = why;
        return Outcome.MALFORMED;
    }

    private static int big16(byte[] b, int at) {
        return (b[at] & 0xff) << 8 | (b[at + 1] & 0xff);
    }

    private static int big32(byte[] b, int at) {
        return big16(b, at) << 16 | big16(b, at + 2);
    }
}
