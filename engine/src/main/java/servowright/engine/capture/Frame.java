package servowright.engine.capture;

import java.util.Arrays;
import servowright.engine.bus.FdFrame;

/**
 * A frame of a capture as it passes by. One object is refilled for every frame, since captures hold millions of them.
 *
 * <p>An error frame is a report of the controller that recorded: its identifier holds the error classes, its data the details, and
 * neither was on the bus in that form.
 */
public final class Frame {
    /** Stands for a frame without a stamp. */
    public static final long NO_TIME = Long.MIN_VALUE;

    /** 29-bit identifier. */
    public static final int EXTENDED = 1;
    /** Remote frame: asks for data and carries none. */
    public static final int REMOTE = 2;
    /** Report of an error. */
    public static final int ERROR = 4;
    /** CAN FD. */
    public static final int FD = 8;
    /** The data were sent at the data rate. */
    public static final int RATE_SWITCH = 16;
    /** The sender was error passive. */
    public static final int SENDER_PASSIVE = 32;
    /** Sent by the recording computer itself. */
    public static final int OWN = 64;

    /** Most bytes of a frame. */
    public static final int MOST_BYTES = 64;

    private final byte[] data = new byte[MOST_BYTES];
    private long timeNs = NO_TIME;
    private int bus;
    private int identifier;
    private int flags;
    private int length;
    private int code;

    /** Starts over with an empty frame. */
    public Frame start(long timeNs, int bus, int identifier, int flags) {
        this.timeNs = timeNs;
        this.bus = bus;
        this.identifier = identifier;
        this.flags = flags;
        this.length = 0;
        this.code = 0;
        return this;
    }

    /** Sets the number of bytes; the length code follows from it. */
    public Frame sized(int bytes) {
        length = bytes;
        code = bytes <= 8 ? bytes : FdFrame.codeFor(bytes);
        return this;
    }

    /** Sets number of bytes and length code apart: classical codes 9 to 15 stand for 8 bytes. */
    public Frame sized(int bytes, int lengthCode) {
        length = bytes;
        code = lengthCode;
        return this;
    }

    /** Adds flags. */
    public Frame marked(int more) {
        flags |= more;
        return this;
    }

    /** Moves the frame in time. */
    public Frame at(long otherNs) {
        timeNs = otherNs;
        return this;
    }

    /** The bytes, of which the first {@link #length()} count; the reader fills them in here. */
    public byte[] data() {
        return data;
    }

    /** A copy of the bytes that count; a remote frame has none. */
    public byte[] payload() {
        return Arrays.copyOf(data, is(REMOTE) ? 0 : length);
    }

    /** When it was recorded, ns from the start of the clock, or {@link #NO_TIME}. */
    public long timeNs() {
        return timeNs;
    }

    public boolean timed() {
        return timeNs != NO_TIME;
    }

    /** Which of the recorded buses, from 0. */
    public int bus() {
        return bus;
    }

    /** Identifier, or the error classes of an error frame. */
    public int identifier() {
        return identifier;
    }

    /** The flags above, added up. */
    public int flags() {
        return flags;
    }

    public boolean is(int flag) {
        return (flags & flag) != 0;
    }

    /** Data bytes carried, or asked for by a remote frame. */
    public int length() {
        return length;
    }

    /** Length code as sent, 0 to 15. */
    public int code() {
        return code;
    }

    /** Byte {@code k} as a number from 0 to 255; 0 behind the last one. */
    public int at(int k) {
        return k < length ? data[k] & 0xff : 0;
    }

    /** Little-endian number of up to 8 bytes, without a sign. */
    public long little(int from, int bytes) {
        long value = 0;
        for (int k = bytes - 1; k >= 0; k--) {
            value = value << 8 | at(from + k);
        }
        return value;
    }
}
