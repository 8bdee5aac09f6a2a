package servowright.app.input.csv;

import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How the time of a row is found: seconds = offset + tick times the clock's number of the row.
 *
 * @param kind where that number comes from
 * @param column which column of the block holds it, -1 for none
 * @param tickS worth of one in seconds
 * @param offsetS time at 0 in seconds
 * @param statedS the interval that the file states elsewhere
 * @param resolution value of the last digit printed, in ticks; 0 when unknown
 * @param modulus where the number starts anew
 * @param epoch the moment of the column's 0 when it counts absolute time
 */
record ClockPlan(
        Kind kind,
        int column,
        double tickS,
        double offsetS,
        OptionalDouble statedS,
        double resolution,
        OptionalDouble modulus,
        Optional<Instant> epoch) {
    enum Kind {
        /** A column holds the time. */
        STAMPS,
        /** A column counts the samples. */
        INDEX,
        /** The rows come at a known interval. */
        ROWS,
        /** There is no time. */
        ORDER
    }

    static ClockPlan rows(double startS, double intervalS) {
        return new ClockPlan(
                Kind.ROWS, -1, intervalS, startS, OptionalDouble.empty(), 0, OptionalDouble.empty(), Optional.empty());
    }

    static ClockPlan order() {
        return new ClockPlan(Kind.ORDER, -1, 1, 0, OptionalDouble.empty(), 0, OptionalDouble.empty(), Optional.empty());
    }

    static ClockPlan index(int column, double startS, double intervalS) {
        return new ClockPlan(
                Kind.INDEX,
                column,
                intervalS,
                startS,
                OptionalDouble.empty(),
                0,
                OptionalDouble.empty(),
                Optional.empty());
    }

    static ClockPlan stamps(int column, double tickS, OptionalDouble statedS, double resolution) {
        return new ClockPlan(
                Kind.STAMPS, column, tickS, 0, statedS, resolution, OptionalDouble.empty(), Optional.empty());
    }

    ClockPlan wrappingAt(double counts) {
        return new ClockPlan(kind, column, tickS, offsetS, statedS, resolution, OptionalDouble.of(counts), epoch);
    }

    ClockPlan since(Instant zero) {
        return new ClockPlan(kind, column, tickS, offsetS, statedS, resolution, modulus, Optional.of(zero));
    }

    boolean hasColumn() {
        return column >= 0;
    }

    double seconds(double count) {
        return offsetS + tickS * count;
    }
}
