package servowright.engine.bus.traffic;

import java.io.IOException;
import java.io.UncheckedIOException;

/**
 * Writes traffic as the lines that Linux tools write and read: seconds in brackets, interface, identifier, hash, payload. <b>Source.</b> form
 * of the lines: public can-utils sources (seen).
 */
public final class LogText extends TrafficLog {
    private static final char[] HEX = "0123456789ABCDEF".toCharArray();

    private final Appendable out;
    private final String networkInterface;
    private final StringBuilder line = new StringBuilder(64);

    /**
     * @param startNs what the clock of the log shows at time 0, ns
     */
    public LogText(Appendable out, String networkInterface, long startNs) {
        super(startNs);
        this.out = out;
        this.networkInterface = networkInterface;
    }

    @Override
    void data(long us, Stream stream, byte[] payload) {
        begin(us);
        hex(stream.id(), extended(stream) ? 8 : 3);
        line.append(stream.fd() ? "##5" : "#");
        end(payload);
    }

    @Override
    void error(long us, int identifier, byte[] detail) {
        begin(us);
        hex(identifier, 8);
        line.append('#');
        end(detail);
    }

    private void begin(long us) {
        line.setLength(0);
        line.append('(');
        decimal(us / 1_000_000, 1_000_000_000);
        line.append('.');
        decimal(us % 1_000_000, 100_000);
        line.append(") ").append(networkInterface).append(' ');
    }

    private void decimal(long value, long highest) {
        if (value >= 10 * highest) {
            line.append(value);
            return;
        }
        for (long place = highest; place > 0; place /= 10) {
            line.append((char) ('0' + value / place % 10));
        }
    }

    private void hex(int value, int digits) {
        for (int k = digits - 1; k >= 0; k--) {
            line.append(HEX[(value >>> (4 * k)) & 15]);
        }
    }

    private void end(byte[] payload) {
        for (byte b : payload) {
            line.append(HEX[(b >>> 4) & 15]).append(HEX[b & 15]);
        }
        try {
            out.append(line.append('\n'));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
