package servowright.engine.capture;

import java.util.ArrayList;
import java.util.List;

/** Follows the stamps of one bus. */
final class StampWatch {
    private static final long HOUR_NS = 3_600_000_000_000L;
    private static final int MOST_JUMPS = 100;

    private final List<Stamps.Jump> jumps = new ArrayList<>();
    private long frames;
    private long firstNs = Frame.NO_TIME;
    private long lastNs = Frame.NO_TIME;
    private long elapsedNs;
    private long backward;
    private long tooClose;
    private long runFrames;
    private long runFromNs;
    private long runNeededNs;
    private Stamps.Crowd crowd = new Stamps.Crowd(0, 0, 0, 0);

    /**
     * Takes a stamp; returns whether the clock goes on steadily from the one before.
     *
     * @param leastNs time the frame takes on the wire at least
     */
    boolean frame(long atNs, long leastNs) {
        frames++;
        if (firstNs == Frame.NO_TIME) {
            firstNs = atNs;
            lastNs = atNs;
            return true;
        }
        long stepNs = atNs - lastNs;
        boolean steady = stepNs >= 0 && stepNs <= HOUR_NS;
        if (steady) {
            elapsedNs += stepNs;
            close(atNs, stepNs, leastNs);
        } else {
            backward += stepNs < 0 ? 1 : 0;
            runFrames = 0;
            if (jumps.size() < MOST_JUMPS) {
                jumps.add(new Stamps.Jump(frames, lastNs, stepNs));
            }
        }
        lastNs = atNs;
        return steady;
    }

    private void close(long atNs, long stepNs, long leastNs) {
        if (stepNs >= leastNs - leastNs / 20) {
            runFrames = 0;
            return;
        }
        tooClose++;
        if (runFrames == 0) {
            runFrames = 1;
            runFromNs = lastNs;
            runNeededNs = 0;
        }
        runFrames++;
        runNeededNs += leastNs;
        if (runFrames > crowd.frames()) {
            crowd = new Stamps.Crowd(runFrames, atNs - runFromNs, runNeededNs, runFromNs);
        }
    }

    Stamps stamps() {
        return new Stamps(firstNs, lastNs, elapsedNs, backward, jumps, tooClose, crowd);
    }
}
