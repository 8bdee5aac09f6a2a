package servowright.engine.bus.traffic;

import servowright.engine.bus.ClassicalFrame;
import servowright.engine.bus.FdFrame;
import servowright.engine.bus.IdLength;
import servowright.engine.quantity.Require;

/**
 * A message that is sent again and again.
 *
 * @param name     what it is
 * @param node     number of its node, from 0
 * @param id       identifier; above 7FF it has 29 bits
 * @param bytes    data it carries; above 8 it is an FD frame
 * @param fd       whether it is an FD frame with rate switch
 * @param periodNs time between two of them on the clock of its node, ns
 * @param offsetNs first event, ns
 * @param jitterNs it is queued up to this much after its event, evenly spread, ns
 * @param fill     what it carries
 */
public record Stream(
        String name, int node, int id, int bytes, boolean fd, long periodNs, long offsetNs, long jitterNs, Fill fill) {
    /** What a message carries. */
    public enum Fill {
        /** Bytes at random. */
        RANDOM,
        /** A count in the first bytes, low byte first; the others zero. */
        COUNT,
        /** The state of a node that is operational, CiA 301. */
        OPERATIONAL,
        /** Whatever has the most stuff bits: the bound of the analysis is taken for the length. */
        LONGEST
    }

    private static final int MOST_STANDARD = 0x7ff;

    public Stream {
        Require.atLeast("node", 0, node);
        Require.within("identifier", 0, 0x1fff_ffff, id, "");
        Require.within("bytes", 0, fd ? 64 : 8, bytes, "");
        Require.positive("period", (double) periodNs, "ns");
        Require.notNegative("jitter", (double) jitterNs, "ns");
    }

    /** A classical message with random content that is queued at its event. */
    public static Stream of(String name, int node, int id, int bytes, long periodNs, long offsetNs) {
        return new Stream(name, node, id, bytes, false, periodNs, offsetNs, 0, Fill.RANDOM);
    }

    /** The same with another content. */
    public Stream filled(Fill other) {
        return new Stream(name, node, id, bytes, fd, periodNs, offsetNs, jitterNs, other);
    }

    /** The same, queued up to so much after its event. */
    public Stream jittering(long otherNs) {
        return new Stream(name, node, id, bytes, fd, periodNs, offsetNs, otherNs, fill);
    }

    IdLength length() {
        return id <= MOST_STANDARD ? IdLength.STANDARD : IdLength.EXTENDED;
    }

    /** Order in arbitration: a standard identifier wins against an extended one with the same first 11 bits. */
    long arbitration() {
        return length() == IdLength.STANDARD
                ? (long) id << 19
                : ((long) (id >>> 18) << 19) + (1 << 18) + (id & 0x3ffff);
    }

    /** Longest time on the bus, ns. */
    public long mostNs(long bitNs, long dataBitNs) {
        return fd
                ? FdFrame.most(length(), FdFrame.codeFor(bytes), true).nanoseconds(bitNs, dataBitNs)
                : ClassicalFrame.mostBits(length(), bytes) * bitNs;
    }
}
