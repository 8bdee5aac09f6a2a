package servowright.engine.recording;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import servowright.engine.quantity.Require;

/** When each row of a recording was taken. */
public sealed interface Clock permits UniformClock, StampedClock, RowOrder {

    /** How many rows there are. */
    int count();

    /** Whether a time is known at all; {@link RowOrder} only has an order. */
    boolean timed();

    /** The time of a row in seconds. */
    double timeS(int row);

    /** The mean time between neighbouring rows of one segment in seconds; NaN with fewer than two rows. */
    double intervalS();

    /** The standard deviation of the time between neighbouring rows of one segment in seconds. */
    double jitterS();

    /** How many different times there are. */
    int distinct();

    /** First rows of the segments, the first always 0: the time may start anew at each. */
    default List<Integer> segmentStarts() {
        return List.of(0);
    }

    /** The moment at time 0 when the file states absolute time. */
    Optional<Instant> began();

    /** The clock of rows {@code from} (included) to {@code to} (excluded). */
    Clock part(int from, int to);

    /** Rows at a constant interval. */
    static Clock uniform(double startS, double intervalS, int count) {
        return new UniformClock(startS, intervalS, count, Optional.empty());
    }

    /** Rows with a stamp each, in one segment. The array is handed over and not to be written to. */
    static Clock stamped(double[] stampsS) {
        return new StampedClock(stampsS, List.of(0), Optional.empty());
    }

    /** Rows in an order without a time, such as the points of a measured curve. */
    static Clock order(int count) {
        return new RowOrder(Require.atLeast("row count", 0, count));
    }
}
