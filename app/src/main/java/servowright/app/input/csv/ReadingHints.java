package servowright.app.input.csv;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import servowright.engine.quantity.Require;
import servowright.engine.quantity.Unit;

/**
 * What a user declares about a recording because the file does not say it. Everything is optional.
 *
 * @param sampleIntervalS "sample_interval": time between rows in seconds, for files without a clock
 * @param orderOnly "sample_interval: none": the rows are points of a curve and have no time
 * @param timeColumn "time_column": number (from 1) or name of the column that holds the time
 * @param timeUnit unit of that column
 * @param channels "channels": new names, by the name or column number in the file
 * @param scales "scale": what one count is worth, by channel
 * @param delimiter "delimiter" between cells
 * @param decimal "decimal" mark in numbers
 * @param wrapsAt "counter_wraps_at": how many values a counter has, by channel; "time" stands for the clock
 * @param repairDropOuts "drop_outs: repair": single-sample drop-outs are replaced by the mean of their neighbours
 * @param segment "segment": the one to take, from 1
 * @param fromS "from": first time to take, in seconds of the file's clock
 * @param toS "to": last time to take
 * @param every "every": rows to a block mean
 * @param budget most numbers to hold at once
 */
public record ReadingHints(
        OptionalDouble sampleIntervalS,
        boolean orderOnly,
        Optional<String> timeColumn,
        Optional<Unit> timeUnit,
        Map<String, String> channels,
        Map<String, Scale> scales,
        Optional<Character> delimiter,
        Optional<Character> decimal,
        Map<String, Double> wrapsAt,
        boolean repairDropOuts,
        OptionalInt segment,
        OptionalDouble fromS,
        OptionalDouble toS,
        int every,
        long budget) {
    /** Fits a heap of 256 MB with room to work on the numbers. */
    public static final long USUAL_BUDGET = 12_000_000;

    public ReadingHints {
        channels = Map.copyOf(channels);
        scales = Map.copyOf(scales);
        wrapsAt = Map.copyOf(wrapsAt);
        Require.atLeast("rows in a block", 1, every);
        sampleIntervalS.ifPresent(s -> Require.positive("sample interval", s, "s"));
    }

    /**
     * The worth of one count.
     *
     * @param perCount in {@code unit}
     * @param zeroCount the count that means 0
     * @param unit of the scaled samples; empty to keep bare counts
     */
    public record Scale(double perCount, double zeroCount, Optional<Unit> unit) {}

    /** Nothing declared. */
    public static ReadingHints none() {
        return new Builder().build();
    }

    /** Starts a declaration. */
    public static Builder declare() {
        return new Builder();
    }

    /** Whether anything but the whole record is asked for. */
    boolean windowed() {
        return fromS.isPresent() || toS.isPresent();
    }

    /** Collects what a user declares. */
    public static final class Builder {
        private OptionalDouble sampleIntervalS = OptionalDouble.empty();
        private boolean orderOnly;
        private Optional<String> timeColumn = Optional.empty();
        private Optional<Unit> timeUnit = Optional.empty();
        private final Map<String, String> channels = new LinkedHashMap<>();
        private final Map<String, Scale> scales = new LinkedHashMap<>();
        private Optional<Character> delimiter = Optional.empty();
        private Optional<Character> decimal = Optional.empty();
        private final Map<String, Double> wrapsAt = new LinkedHashMap<>();
        private boolean repairDropOuts;
        private OptionalInt segment = OptionalInt.empty();
        private OptionalDouble fromS = OptionalDouble.empty();
        private OptionalDouble toS = OptionalDouble.empty();
        private int every = 1;
        private long budget = USUAL_BUDGET;

        private Builder() {}

        /** {@code sample_interval} in seconds. */
        public Builder sampleInterval(double seconds) {
            sampleIntervalS = OptionalDouble.of(seconds);
            return this;
        }

        /** {@code sample_interval: none}. */
        public Builder orderOnly() {
            orderOnly = true;
            return this;
        }

        /** {@code time_column}, by number or name, with its unit. */
        public Builder timeColumn(String column, Unit unit) {
            timeColumn = Optional.of(column);
            timeUnit = Optional.of(unit);
            return this;
        }

        /** Renames a channel. */
        public Builder channel(String inFile, String name) {
            channels.put(inFile, name);
            return this;
        }

        /** Gives counts a worth. */
        public Builder scale(String channel, Scale scale) {
            scales.put(channel, scale);
            return this;
        }

        /** {@code delimiter}. */
        public Builder delimiter(char mark) {
            delimiter = Optional.of(mark);
            return this;
        }

        /** {@code decimal}. */
        public Builder decimal(char mark) {
            decimal = Optional.of(mark);
            return this;
        }

        /** {@code counter_wraps_at}. */
        public Builder wrapsAt(String channel, double values) {
            wrapsAt.put(channel, Require.positive("number of counter values", values, ""));
            return this;
        }

        /** {@code drop_outs: repair}. */
        public Builder repairDropOuts() {
            repairDropOuts = true;
            return this;
        }

        /** {@code segment}, from 1. */
        public Builder segment(int number) {
            segment = OptionalInt.of(Require.atLeast("segment number", 1, number));
            return this;
        }

        /** {@code from}. */
        public Builder from(double seconds) {
            fromS = OptionalDouble.of(seconds);
            return this;
        }

        /** {@code to}. */
        public Builder to(double seconds) {
            toS = OptionalDouble.of(seconds);
            return this;
        }

        /** {@code every}. */
        public Builder every(int rows) {
            every = rows;
            return this;
        }

        /** Most numbers to hold at once. */
        public Builder budget(long numbers) {
            budget = numbers;
            return this;
        }

        /** The declaration. */
        public ReadingHints build() {
            return new ReadingHints(
                    sampleIntervalS,
                    orderOnly,
                    timeColumn,
                    timeUnit,
                    channels,
                    scales,
                    delimiter,
                    decimal,
                    wrapsAt,
                    repairDropOuts,
                    segment,
                    fromS,
                    toS,
                    every,
                    budget);
        }
    }
}
