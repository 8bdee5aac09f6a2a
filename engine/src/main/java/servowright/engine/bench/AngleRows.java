package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import servowright.engine.encoder.Angles;
import servowright.engine.known.Outcome;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.TestFigure;
import servowright.engine.quantity.Dimension;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Clock;
import servowright.engine.recording.Recording;
import servowright.engine.recording.Saturation;

/**
 * Rows of a recording in which every channel that is needed has a number, angles in radians.
 *
 * @param seconds times of the rows; empty if the recording has none
 * @param columns per role its values; the field in the unit it has
 * @param remarks what was found and how it was handled
 */
record AngleRows(double[] seconds, Map<AngleRole, double[]> columns, List<Phrase> remarks) {
    /** More rows make a fit slower, not better. */
    private static final int MOST = 40_000;

    AngleRows {
        remarks = List.copyOf(remarks);
    }

    double[] column(AngleRole role) {
        return columns.getOrDefault(role, new double[0]);
    }

    boolean has(AngleRole role) {
        return columns.containsKey(role);
    }

    boolean timed() {
        return seconds.length > 0;
    }

    int count() {
        return column(AngleRole.ANGLE).length;
    }

    /** The rows of the numbers given. */
    AngleRows only(int... rows) {
        Map<AngleRole, double[]> kept = new EnumMap<>(AngleRole.class);
        columns.forEach((role, values) -> kept.put(role, picked(values, rows)));
        return new AngleRows(timed() ? picked(seconds, rows) : seconds, kept, remarks);
    }

    private static double[] picked(double[] values, int... rows) {
        return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
    }

    /** The rows of a recording, or what is missing for them. */
    static Outcome<AngleRows> of(BenchTest test, Recording recording, OptionalInt countsPerTurn, AngleRole... needed) {
        Map<AngleRole, Channel> channels = new EnumMap<>(AngleRole.class);
        for (AngleRole role : needed) {
            Optional<Channel> channel = role.channel(test.channels()).flatMap(recording::channel);
            if (channel.isEmpty()) {
                return Outcome.missing(
                        "which channel of " + recording.name() + " shows the " + role.words(),
                        "state it under channels: NAME: " + role.words());
            }
            channels.put(role, channel.get());
        }
        AngleRole.FIELD
                .channel(test.channels())
                .flatMap(recording::channel)
                .ifPresent(c -> channels.put(AngleRole.FIELD, c));
        return new Reader(test, recording, countsPerTurn, channels).rows();
    }

    /** One reading of one recording. */
    private record Reader(
            BenchTest test, Recording recording, OptionalInt countsPerTurn, Map<AngleRole, Channel> channels) {
        Outcome<AngleRows> rows() {
            int[] rows = IntStream.range(0, recording.count())
                    .filter(i -> channels.values().stream().allMatch(c -> Double.isFinite(c.samples()[i])))
                    .toArray();
            List<Phrase> remarks = new ArrayList<>();
            int lost = recording.count() - rows.length;
            if (lost > 0) {
                remarks.add(
                        Phrase.of("{lost} rows without a number were left out").with("lost", lost));
            }
            for (Channel channel : channels.values()) {
                Optional<Saturation> still = Saturation.find(picked(channel.samples(), rows));
                if (still.filter(Saturation::sure).isPresent()) {
                    return Outcome.missing(
                            "a reading in " + recording.name() + " that does not run into its limit: " + channel.name()
                                    + " is cut off",
                            "choose a larger range and record again");
                }
                still.ifPresent(s -> remarks.add(AtLimit.words(channel.name(), s.count() / (double) rows.length)));
            }
            int[] kept = thinned(rows, remarks);
            Map<AngleRole, double[]> columns = new EnumMap<>(AngleRole.class);
            for (Map.Entry<AngleRole, Channel> e : channels.entrySet()) {
                Outcome<double[]> column = column(e.getKey(), e.getValue(), kept);
                if (column instanceof Outcome.Missing<double[]> why) {
                    return why.forAnother();
                }
                columns.put(e.getKey(), column.found().orElseThrow());
            }
            return Outcome.answer(new AngleRows(seconds(kept), columns, remarks), Working.NONE);
        }

        private static int[] thinned(int[] rows, List<Phrase> remarks) {
            int every = (rows.length + MOST - 1) / MOST;
            if (every < 2) {
                return rows;
            }
            remarks.add(Phrase.of("every {n}th row was taken").with("n", every));
            return IntStream.range(0, rows.length / every)
                    .map(i -> rows[i * every])
                    .toArray();
        }

        private double[] seconds(int... rows) {
            Clock clock = recording.clock();
            Optional<Double> interval =
                    test.figures().get(TestFigure.SAMPLE_INTERVAL).map(d -> d.si());
            if (!clock.timed() && interval.isEmpty()) {
                return new double[0];
            }
            return Arrays.stream(rows)
                    .mapToDouble(i -> clock.timed() ? clock.timeS(i) : i * interval.orElseThrow())
                    .toArray();
        }

        private Outcome<double[]> column(AngleRole role, Channel channel, int... rows) {
            double[] values = picked(channel.samples(), rows);
            if (role == AngleRole.FIELD
                    || channel.unit()
                            .filter(u -> u.dimension().equals(Dimension.ANGLE))
                            .isPresent()) {
                return Outcome.answer(values, Working.NONE);
            }
            if (role != AngleRole.ANGLE || channel.unit().isPresent()) {
                return Outcome.missing(
                        "an angle in channel " + channel.name() + " of " + recording.name(),
                        "state what one count is worth under scale: " + channel.name() + ": 1 deg");
            }
            return counts(channel, values);
        }

        private Outcome<double[]> counts(Channel channel, double[] values) {
            if (countsPerTurn.isEmpty()) {
                return Outcome.missing(
                        "counts per turn of " + channel.name(), "state the resolution of the sensor in machine.yaml");
            }
            int perTurn = countsPerTurn.getAsInt();
            int[] counts =
                    Arrays.stream(values).mapToInt(v -> (int) Math.rint(v)).toArray();
            int most = Arrays.stream(counts).max().orElse(0);
            int least = Arrays.stream(counts).min().orElse(0);
            if (least < 0 || most >= perTurn) {
                return Outcome.missing(
                        "counts of one turn in " + channel.name() + ": they run from " + least + " to " + most
                                + ", the sensor is said to have " + perTurn,
                        "check the resolution of the sensor, or state what one count is worth under scale");
            }
            return Outcome.answer(Angles.ofCounts(counts, perTurn), Working.NONE);
        }
    }
}
