package servowright.engine.capture;

import java.util.Arrays;

/** The load over a whole capture in at most 2048 steps: whenever they do not suffice, two become one. */
final class LoadSeries {
    private static final int MOST = 2048;

    private final long[] heldNs = new long[MOST];
    private long stepNs = 1_000_000;
    private long startNs;
    private int used;
    private int at;
    private long fromNs;
    private long toNs;

    void frame(long atNs, long busyNs) {
        if (atNs >= fromNs && atNs < toNs) {
            heldNs[at] += busyNs;
        } else {
            turn(atNs, busyNs);
        }
    }

    /** A frame in another step than the one before. */
    private void turn(long atNs, long busyNs) {
        if (used == 0) {
            startNs = atNs;
        }
        long step = (atNs - startNs) / stepNs;
        while (step >= MOST) {
            halve();
            step = (atNs - startNs) / stepNs;
        }
        if (step >= 0 && atNs >= startNs) {
            at = (int) step;
            fromNs = startNs + at * stepNs;
            toNs = fromNs + stepNs;
            heldNs[at] += busyNs;
            used = Math.max(used, at + 1);
        }
    }

    private void halve() {
        for (int k = 0; k < MOST / 2; k++) {
            heldNs[k] = heldNs[2 * k] + heldNs[2 * k + 1];
        }
        Arrays.fill(heldNs, MOST / 2, MOST, 0);
        used = (used + 1) / 2;
        stepNs *= 2;
    }

    LoadCurve curve() {
        double[] shares = new double[used];
        for (int k = 0; k < used; k++) {
            shares[k] = (double) heldNs[k] / stepNs;
        }
        return new LoadCurve(startNs, stepNs, shares);
    }
}
