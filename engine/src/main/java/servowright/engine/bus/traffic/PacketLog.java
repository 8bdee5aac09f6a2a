package servowright.engine.bus.traffic;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * Writes traffic as a pcap file of link type 227: a head, then for each frame seconds, microseconds, length, and the record of the socket
 * with the identifier in network order. <b>Source.</b> public description of the file form and header {@code can_socketcan.h} of its library
 * (seen).
 */
public final class PacketLog extends TrafficLog {
    private static final int MAGIC = 0xa1b2c3d4;
    private static final int LINK_TYPE = 227;
    private static final int LONGEST = 262_144;
    private static final int HEAD = 24;
    private static final int RECORD_HEAD = 16;
    private static final int FRAME_HEAD = 8;
    private static final int EXTENDED = 0x8000_0000;
    private static final byte FD_WITH_RATE_SWITCH = 5;
    private static final int MOST_BYTES = 64;

    private final OutputStream out;
    private final ByteBuffer record =
            ByteBuffer.allocate(RECORD_HEAD + FRAME_HEAD + MOST_BYTES).order(ByteOrder.LITTLE_ENDIAN);

    /**
     * Begins with the head of the file.
     *
     * @param startNs what the clock of the log shows at time 0, ns; from 1970 to 2106
     */
    public PacketLog(OutputStream out, long startNs) {
        super(startNs);
        this.out = out;
        record.clear().putInt(MAGIC).putShort((short) 2).putShort((short) 4).putLong(0);
        record.putInt(LONGEST).putInt(LINK_TYPE);
        write(HEAD);
    }

    @Override
    void data(long us, Stream stream, byte[] payload) {
        int identifier = extended(stream) ? EXTENDED | stream.id() : stream.id();
        put(us, identifier, stream.fd() ? FD_WITH_RATE_SWITCH : 0, payload);
    }

    @Override
    void error(long us, int identifier, byte[] detail) {
        put(us, identifier, (byte) 0, detail);
    }

    private void put(long us, int identifier, byte fdFlags, byte[] payload) {
        int length = FRAME_HEAD + payload.length;
        record.clear().putInt((int) (us / 1_000_000)).putInt((int) (us % 1_000_000));
        record.putInt(length).putInt(length);
        record.putInt(Integer.reverseBytes(identifier));
        record.put((byte) payload.length).put(fdFlags).putShort((short) 0).put(payload);
        write(RECORD_HEAD + length);
    }

    private void write(int bytes) {
        try {
            out.write(record.array(), 0, bytes);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
