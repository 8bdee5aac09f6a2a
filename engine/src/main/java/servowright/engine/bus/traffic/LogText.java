package servowright.engine.bus.traffic;

import java.io.IOException;
import java.io.UncheckedIOException;
import servowright.engine.bus.ErrorState;

/**
 * Writes traffic as the lines that Linux tools write and read: seconds in brackets, interface, identifier, hash, payload. Broken frames
 * become error frames with the class of the error and the counters of the sender. <b>Source.</b> form of the lines and classes of error
 * frames: public kernel header and can-utils sources (seen).
 */
public final class LogText implements Watcher {
    private static final int ERROR_FRAME = 0x2000_0000;
    private static final int PROTOCOL = 0x08;
    private static final int NOT_ACKNOWLEDGED = 0x20;
    private static final int BUS_OFF = 0x40;
    private static final int RESTARTED = 0x100;
    private static final int COUNTERS = 0x200;
    private static final char[] HEX = "0123456789ABCDEF".toCharArray();

    private final Appendable out;
    private final String networkInterface;
    private final long startNs;
    private final StringBuilder line = new StringBuilder(64);

    /**
     * @param startNs what the clock of the log shows at time 0, ns
     */
    public LogText(Appendable out, String networkInterface, long startNs) {
        this.out = out;
        this.networkInterface = networkInterface;
        this.startNs = startNs;
    }

    @Override
    public void frame(Stream stream, long eventNs, long startNs, long endNs, byte[] payload) {
        begin(endNs);
        hex(stream.id(), stream.id() > 0x7ff ? 8 : 3);
        line.append(stream.fd() ? "##5" : "#");
        bytes(payload);
        end();
    }

    @Override
    public void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {
        int kind = why == Spoilt.NOT_ACKNOWLEDGED ? NOT_ACKNOWLEDGED : PROTOCOL;
        byte[] detail = new byte[8];
        detail[2] = (byte) (why == Spoilt.NOT_ACKNOWLEDGED ? 0 : why == Spoilt.NOISE ? 0x04 : 0x01);
        detail[6] = (byte) Math.min(255, state.transmit());
        detail[7] = (byte) Math.min(255, state.receive());
        error(endNs, kind | COUNTERS, detail);
    }

    @Override
    public void left(Sender sender, long ns) {
        error(ns, BUS_OFF, new byte[8]);
    }

    @Override
    public void back(Sender sender, long ns) {
        error(ns, RESTARTED, new byte[8]);
    }

    private void error(long ns, int kind, byte[] detail) {
        begin(ns);
        hex(ERROR_FRAME | kind, 8);
        line.append('#');
        bytes(detail);
        end();
    }

    private void begin(long ns) {
        long us = (startNs + ns) / 1000;
        line.setLength(0);
        line.append('(');
        padded(us / 1_000_000, 10);
        line.append('.');
        padded(us % 1_000_000, 6);
        line.append(") ").append(networkInterface).append(' ');
    }

    private void padded(long value, int digits) {
        String text = Long.toString(value);
        line.append("0".repeat(Math.max(0, digits - text.length()))).append(text);
    }

    private void hex(int value, int digits) {
        for (int k = digits - 1; k >= 0; k--) {
            line.append(HEX[(value >>> (4 * k)) & 15]);
        }
    }

    private void bytes(byte[] payload) {
        for (byte b : payload) {
            hex(b & 0xff, 2);
        }
    }

    private void end() {
        try {
            out.append(line.append('\n'));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
