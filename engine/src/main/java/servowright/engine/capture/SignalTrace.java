package servowright.engine.capture;

import java.util.Arrays;

/** Keeps the course of a signal while a capture goes by: every value at first, fewer of them the longer it gets. */
public final class SignalTrace implements FrameSink {
    private static final int MOST = 1 << 16;

    private final Signal signal;
    private final double[] atS = new double[MOST];
    private final double[] values = new double[MOST];
    private long startNs = Frame.NO_TIME;
    private int used;
    private long seen;
    private int every = 1;

    public SignalTrace(Signal signal) {
        this.signal = signal;
    }

    @Override
    public void frame(Frame frame) {
        if (!frame.timed() || !signal.in(frame) || seen++ % every != 0) {
            return;
        }
        if (used == MOST) {
            for (int k = 0; k < MOST / 2; k++) {
                atS[k] = atS[2 * k];
                values[k] = values[2 * k];
            }
            used = MOST / 2;
            every *= 2;
        }
        startNs = startNs == Frame.NO_TIME ? frame.timeNs() : startNs;
        atS[used] = (frame.timeNs() - startNs) * 1e-9;
        values[used++] = signal.value(frame);
    }

    public Signal signal() {
        return signal;
    }

    /** Stamp of the first value, ns. */
    public long startNs() {
        return startNs;
    }

    /** Times of the values after the first, s. */
    public double[] atS() {
        return Arrays.copyOf(atS, used);
    }

    /** The values, SI. */
    public double[] values() {
        return Arrays.copyOf(values, used);
    }
}
