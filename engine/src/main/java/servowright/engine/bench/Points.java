package servowright.engine.bench;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import servowright.engine.known.Outcome;
import servowright.engine.known.Outcome.Missing;
import servowright.engine.known.Phrase;
import servowright.engine.known.Working;
import servowright.engine.machine.BenchTest;
import servowright.engine.machine.Declared;
import servowright.engine.machine.Reading;
import servowright.engine.machine.ReadingFigure;
import servowright.engine.recording.Channel;
import servowright.engine.recording.Recording;

/**
 * Two quantities read together: by hand, or along a recording.
 *
 * @param x        the one that was set
 * @param y        the one that followed
 * @param xDigits  standard uncertainty of each x from its last digit; zeros for a recording
 * @param yDigits  the same for y
 * @param recorded whether they stand in the order of time, close together
 * @param said     what the test says of x and of y
 * @param remarks  what was found and how it was handled
 */
@SuppressWarnings("ArrayRecordComponent") // compared by identity on purpose, as in Trace
record Points(
        double[] x,
        double[] y,
        double[] xDigits,
        double[] yDigits,
        boolean recorded,
        String said,
        List<Phrase> remarks) {
    /** More samples are brought to means of neighbours: that many carry all that a line needs. */
    private static final int MOST = 20_000;

    Points {
        remarks = List.copyOf(remarks);
    }

    /** Both quantities, or what is missing. */
    static Outcome<Points> of(BenchTest test, Optional<Recording> recording, Wanted x, Wanted y) {
        return recording.isPresent() ? recorded(test, recording.get(), x, y) : read(test, x, y);
    }

    private static Outcome<Points> read(BenchTest test, Wanted x, Wanted y) {
        List<Reading> both = test.readings().stream()
                .filter(r -> r.figures().get(x.figure()).isPresent()
                        && r.figures().get(y.figure()).isPresent())
                .toList();
        if (both.size() < 2) {
            return Outcome.missing(
                    "two or more readings of " + x.words() + " and " + y.words() + " in " + test.id(),
                    "add readings: {" + x.words() + ": .., " + y.words() + ": ..}");
        }
        String said = String.join(
                " ",
                both.stream()
                        .flatMap(r -> Stream.of(x, y).flatMap(w -> r.figures().all(w.figure()).stream()))
                        .flatMap(d -> d.stated().qualifiers().stream())
                        .toList());
        Points points = new Points(
                figures(both, x.figure()),
                figures(both, y.figure()),
                digits(both, x.figure()),
                digits(both, y.figure()),
                false,
                said,
                List.of());
        return points.varied(test, x);
    }

    private static double[] figures(List<Reading> readings, ReadingFigure figure) {
        return readings.stream()
                .mapToDouble(r -> r.figures().get(figure).orElseThrow().si())
                .toArray();
    }

    private static double[] digits(List<Reading> readings, ReadingFigure figure) {
        return readings.stream()
                .mapToDouble(r -> {
                    Declared d = r.figures().get(figure).orElseThrow();
                    return Resolution.of(r, figure, d.known()).standardUncertainty();
                })
                .toArray();
    }

    private static Outcome<Points> recorded(BenchTest test, Recording recording, Wanted x, Wanted y) {
        Outcome<Trace> first = trace(test, recording, x);
        Outcome<Trace> second = trace(test, recording, y);
        if (first instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        if (second instanceof Missing<Trace> why) {
            return why.forAnother();
        }
        Trace a = first.found().orElseThrow();
        Trace b = second.found().orElseThrow();
        if (a.count() != b.count()) {
            return Outcome.missing(
                    a.channel() + " and " + b.channel() + " of " + recording.name() + " at the same times",
                    "record both without gaps");
        }
        List<Phrase> remarks = new ArrayList<>(a.remarks());
        b.remarks().stream().filter(r -> !remarks.contains(r)).forEach(remarks::add);
        double[] xs = thinned(a.values());
        String said = test.channels().getOrDefault(a.channel(), "") + " "
                + test.channels().getOrDefault(b.channel(), "");
        Points points = new Points(
                xs,
                thinned(b.values()),
                new double[xs.length],
                new double[xs.length],
                true,
                said.toLowerCase(Locale.ROOT),
                remarks);
        return points.varied(test, x);
    }

    /** The channel that shows a quantity, neither flat nor cut off. */
    static Outcome<Trace> trace(BenchTest test, Recording recording, Wanted wanted) {
        Outcome<Trace> trace = shown(test, recording, wanted);
        return trace.fold(a -> whole(recording, wanted, a.value()), Missing::forAnother);
    }

    /** A trace that does not run into its limit. */
    private static Outcome<Trace> whole(Recording recording, Wanted wanted, Trace trace) {
        return trace.saturation().isPresent()
                ? cutOff(recording, wanted, trace)
                : Outcome.answer(trace.doubted(), Working.NONE);
    }

    static <T> Outcome<T> cutOff(Recording recording, Wanted wanted, Trace trace) {
        return Outcome.missing(
                wanted.one() + " in " + recording.name() + " that does not run into its limit: " + trace.channel()
                        + " is cut off",
                "choose a larger range and record again");
    }

    /** The channel that shows a quantity, not flat, but perhaps cut off. */
    static Outcome<Trace> shown(BenchTest test, Recording recording, Wanted wanted) {
        for (Channel channel : recording.channels()) {
            String said =
                    test.channels().isEmpty() ? wanted.words() : test.channels().getOrDefault(channel.name(), "");
            if (wanted.shownBy(channel, said)) {
                return Trace.of(test, recording, channel);
            }
        }
        return Outcome.missing(
                wanted.one() + " in " + recording.name(),
                "state channels: {..: " + wanted.words() + "}, with a unit of " + wanted.words()
                        + " in the file or in scale");
    }

    private static double[] thinned(double[] values) {
        int block = (values.length + MOST - 1) / MOST;
        if (block <= 1) {
            return values;
        }
        double[] means = new double[values.length / block];
        for (int b = 0; b < means.length; b++) {
            means[b] = Arrays.stream(values, b * block, (b + 1) * block).sum() / block;
        }
        return means;
    }

    private Outcome<Points> varied(BenchTest test, Wanted what) {
        double least = Arrays.stream(x).min().orElseThrow();
        if (what.equals(Wanted.AFTER) && least < 0) {
            return Outcome.missing(
                    "times after switching off, none before it, in " + test.id(), "count the time from that moment");
        }
        double most = Arrays.stream(x).max().orElseThrow();
        double largest = Math.max(Math.abs(least), Math.abs(most));
        return most - least > 0.1 * largest
                ? Outcome.answer(this, Working.NONE)
                : Outcome.missing(
                        "a " + what.words() + " that changes in " + test.id(),
                        "read at several values, the largest at least twice the smallest");
    }

    /** Some of the points. */
    Points only(int[] rows) {
        return new Points(
                picked(x, rows),
                picked(y, rows),
                picked(xDigits, rows),
                picked(yDigits, rows),
                recorded,
                said,
                remarks);
    }

    private static double[] picked(double[] values, int[] rows) {
        return Arrays.stream(rows).mapToDouble(i -> values[i]).toArray();
    }
}
