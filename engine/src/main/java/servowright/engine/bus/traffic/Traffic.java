package servowright.engine.bus.traffic;

import java.util.List;
import servowright.engine.quantity.Require;

/**
 * A bus with its nodes and what they send.
 *
 * @param bitNs     bit time of arbitration, ns
 * @param dataBitNs bit time of FD data, ns
 * @param senders   nodes; a stream names its own by number
 * @param streams   what is sent, in any order
 * @param bitErrors share of bits that noise turns over
 * @param queueDepth messages of one stream that may wait; further ones are lost where they are made
 */
public record Traffic(
        long bitNs, long dataBitNs, List<Sender> senders, List<Stream> streams, double bitErrors, int queueDepth) {
    /** Messages of one stream that may wait in a usual host. */
    public static final int USUAL_DEPTH = 16;

    public Traffic {
        senders = List.copyOf(senders);
        streams = List.copyOf(streams);
        Require.positive("bit time", (double) bitNs, "ns");
        Require.positive("bit time of data", (double) dataBitNs, "ns");
        Require.within("bit errors", 0, 1, bitErrors, "");
        Require.atLeast("queue depth", 1, queueDepth);
        for (Stream s : streams) {
            Require.within("node of " + s.name(), 0, senders.size() - 1, s.node(), "");
        }
    }

    /** A classical bus without noise. */
    public static Traffic classical(long bitNs, List<Sender> senders, List<Stream> streams) {
        return new Traffic(bitNs, bitNs, senders, streams, 0, USUAL_DEPTH);
    }

    /** The same with noise. */
    public Traffic noisy(double share) {
        return new Traffic(bitNs, dataBitNs, senders, streams, share, queueDepth);
    }
}
