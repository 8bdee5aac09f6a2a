package servowright.engine.bus.traffic;

import servowright.engine.bus.ErrorState;

/**
 * Writes traffic down as a recording computer would have seen it: frames at their end, and broken ones as error frames with the class of the
 * error and the counters of the sender. <b>Source.</b> classes of error frames: public kernel header (seen).
 */
abstract class TrafficLog implements Watcher {
    /** Marks an error frame in its identifier. */
    static final int ERROR_FRAME = 0x2000_0000;

    private static final int PROTOCOL = 0x08;
    private static final int NOT_ACKNOWLEDGED = 0x20;
    private static final int BUS_OFF = 0x40;
    private static final int RESTARTED = 0x100;
    private static final int COUNTERS = 0x200;
    private static final int MOST_STANDARD = 0x7ff;

    private final long clockNs;

    /**
     * @param clockNs what the clock of the log shows at time 0, ns
     */
    TrafficLog(long clockNs) {
        this.clockNs = clockNs;
    }

    /** Writes a frame of one stream; the clock in whole microseconds. */
    abstract void data(long us, Stream stream, byte[] payload);

    /** Writes an error report; {@code identifier} has the mark and the classes. */
    abstract void error(long us, int identifier, byte[] detail);

    static boolean extended(Stream stream) {
        return stream.id() > MOST_STANDARD;
    }

    @Override
    public final void frame(Stream stream, long eventNs, long startNs, long endNs, byte[] payload) {
        data(us(endNs), stream, payload);
    }

    @Override
    public final void broken(Stream stream, Spoilt why, long startNs, long endNs, ErrorState state) {
        int kind = why == Spoilt.NOT_ACKNOWLEDGED ? NOT_ACKNOWLEDGED : PROTOCOL;
        byte[] detail = new byte[8];
        detail[2] = (byte) (why == Spoilt.NOT_ACKNOWLEDGED ? 0 : why == Spoilt.NOISE ? 0x04 : 0x01);
        detail[6] = (byte) Math.min(255, state.transmit());
        detail[7] = (byte) Math.min(255, state.receive());
        error(us(endNs), ERROR_FRAME | kind | COUNTERS, detail);
    }

    @Override
    public final void left(Sender sender, long ns) {
        error(us(ns), ERROR_FRAME | BUS_OFF, new byte[8]);
    }

    @Override
    public final void back(Sender sender, long ns) {
        error(us(ns), ERROR_FRAME | RESTARTED, new byte[8]);
    }

    private long us(long ns) {
        return (clockNs + ns) / 1000;
    }
}
