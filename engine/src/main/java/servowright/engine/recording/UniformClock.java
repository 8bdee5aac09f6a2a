package servowright.engine.recording;

import java.time.Instant;
import java.util.Optional;
import servowright.engine.quantity.Require;

/**
 * A clock that ticks evenly.
 *
 * @param startS time of the first row in seconds
 * @param intervalS time between rows in seconds, above 0
 * @param count number of rows
 * @param began the moment at time 0 when it is known
 */
public record UniformClock(double startS, double intervalS, int count, Optional<Instant> began) implements Clock {
    public UniformClock {
        Require.finite("start", startS, "s");
        Require.positive("interval", intervalS, "s");
        Require.atLeast("row count", 0, count);
    }

    @Override
    public boolean timed() {
        return true;
    }

    @Override
    public double timeS(int row) {
        return startS + row * intervalS;
    }

    @Override
    public double jitterS() {
        return 0;
    }

    @Override
    public int distinct() {
        return count;
    }

    @Override
    public UniformClock part(int from, int to) {
        return new UniformClock(timeS(from), intervalS, to - from, began);
    }
}
