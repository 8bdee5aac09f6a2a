package servowright.engine.recording;

import java.time.Instant;
import java.util.Optional;

/**
 * No clock: the rows have an order and nothing more, such as the points of a measured curve. Asking it for a time is a
 * mistake of the caller.
 */
public record RowOrder(int count) implements Clock {
    @Override
    public boolean timed() {
        return false;
    }

    @Override
    public double timeS(int row) {
        throw new IllegalStateException("rows without a clock have no time");
    }

    @Override
    public double intervalS() {
        return Double.NaN;
    }

    @Override
    public double jitterS() {
        return Double.NaN;
    }

    @Override
    public int distinct() {
        return count;
    }

    @Override
    public Optional<Instant> began() {
        return Optional.empty();
    }

    @Override
    public RowOrder part(int from, int to) {
        return new RowOrder(to - from);
    }
}
